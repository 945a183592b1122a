"use client";

import dynamic from "next/dynamic";
import { createContext, type ReactNode, useContext } from "react";
import type { LanguageId } from "@/lib/words/languages";
import type { Manner, Reader } from "@/lib/words/reader";

export const ReaderContext = createContext<Reader | null>(null);

interface Told {
	readonly manner: Manner;
	readonly children: ReactNode;
}

/** One script a language, so that a page loads the sentences of its own. */
const TELLERS = {
	en: dynamic(() => import("./told-in-english")),
	de: dynamic(() => import("./told-in-german")),
} satisfies Record<LanguageId, unknown>;

export function ReaderProvider({ manner, children }: Told) {
	const Teller = TELLERS[manner.language];
	return <Teller manner={manner}>{children}</Teller>;
}

/** The reader's units and language; on the server use `readReader`. */
export function useReader(): Reader {
	const reader = useContext(ReaderContext);
	if (reader === null) throw new Error("there is no reader above this part");
	return reader;
}
