"use client";

import { type ReactNode, useMemo } from "react";
import { ENGLISH } from "@/lib/words/en/messages";
import { type Manner, readerOf } from "@/lib/words/reader";
import { ReaderContext } from "./reader";

export default function ToldInEnglish({
	manner,
	children,
}: {
	manner: Manner;
	children: ReactNode;
}) {
	const { system } = manner;
	const reader = useMemo(
		() => readerOf({ system, language: "en" }, ENGLISH),
		[system],
	);
	return <ReaderContext value={reader}>{children}</ReaderContext>;
}
