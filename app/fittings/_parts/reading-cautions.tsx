"use client";

import { Notice } from "@/app/_ui/notice";
import { cautionText } from "@/lib/present/notices";
import { useDesk } from "./desk";

/** What is worth saying while the tape is still out: read once more, or it cannot be. */
const WHILE_MEASURING: readonly string[] = [
	"reading-unexpected",
	"outside-source-range",
	"span-unexpected",
	"span-not-reached",
	"step-needed",
];

/** Readings of body or stance that the others make improbable. Stands inside a FittingDesk. */
export function ReadingCautions({ of }: { of: "body" | "reach" }) {
	const { advice, reader } = useDesk();
	if (!advice.ok) return null;
	const texts = advice.value[of].cautions
		.filter(({ code }) => WHILE_MEASURING.includes(code))
		.map((caution) => cautionText(caution, reader));
	return texts.map((text) => (
		<Notice key={text} kind="caution" live>
			{text}
		</Notice>
	));
}
