"use client";

import { type ReactNode, useMemo } from "react";
import { GERMAN } from "@/lib/words/de/messages";
import { type Manner, readerOf } from "@/lib/words/reader";
import { ReaderContext } from "./reader";

export default function ToldInGerman({
	manner,
	children,
}: {
	manner: Manner;
	children: ReactNode;
}) {
	const { system } = manner;
	const reader = useMemo(
		() => readerOf({ system, language: "de" }, GERMAN),
		[system],
	);
	return <ReaderContext value={reader}>{children}</ReaderContext>;
}
