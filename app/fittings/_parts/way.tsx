"use client";

import { usePathname } from "next/navigation";
import { createContext, type ReactNode, useContext, useMemo } from "react";
import { stepHref } from "./steps";

/** Where one is in a fitting, and the addresses of its stops. */
interface Way {
	/** Id of the present stop. */
	readonly current: string;
	readonly hrefOf: (id: string) => string;
}

const WayContext = createContext<Way | null>(null);

export function useWay(): Way {
	const way = useContext(WayContext);
	if (way === null) throw new Error("useWay outside a fitting");
	return way;
}

/** The stops of a fitting with a number, each under an address of its own. */
export function NumberedWay({
	fittingNumber,
	children,
}: {
	fittingNumber: number;
	children: ReactNode;
}) {
	const current = usePathname().split("/")[3] ?? "";
	const way = useMemo(
		() => ({
			current,
			hrefOf: (id: string) => stepHref(fittingNumber, id),
		}),
		[current, fittingNumber],
	);
	return <WayContext value={way}>{children}</WayContext>;
}

/** The stops of a fitting that stands on the device alone, told apart behind the question mark. */
export function DeviceWay({
	current,
	addressOf,
	children,
}: {
	current: string;
	addressOf: (id: string) => string;
	children: ReactNode;
}) {
	const way = useMemo(
		() => ({ current, hrefOf: addressOf }),
		[current, addressOf],
	);
	return <WayContext value={way}>{children}</WayContext>;
}

/**
 * A link to a stop that asks nothing of the server: everything the stops show is on the page already,
 * so that the way leads on where the network does not.
 */
export function stayingOnPage(href: string) {
	return {
		href,
		prefetch: false,
		onNavigate: (event: { preventDefault: () => void }) => {
			event.preventDefault();
			window.history.pushState(null, "", href);
			window.scrollTo(0, 0);
		},
	} as const;
}
