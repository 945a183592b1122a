"use client";

import { type ReactNode, useRef, useTransition } from "react";
import { Button, type ButtonLook } from "@/app/_ui/button";
import { newRequestKey } from "@/app/_ui/request-key";
import { refit } from "../[number]/actions";

/** Starts a new fitting of the player with an earlier one's answers. Pressed twice it starts one. */
export function RefitButton({
	playerId,
	fittingId,
	look,
	children,
}: {
	playerId: string;
	fittingId: string;
	look?: ButtonLook;
	children: ReactNode;
}) {
	const [isBusy, startTransition] = useTransition();
	const requestKey = useRef<string | null>(null);
	return (
		<Button
			look={look}
			busy={isBusy}
			onClick={() => {
				requestKey.current ??= newRequestKey();
				const request = { playerId, fittingId, requestKey: requestKey.current };
				startTransition(() => refit(request));
			}}
		>
			{children}
		</Button>
	);
}
