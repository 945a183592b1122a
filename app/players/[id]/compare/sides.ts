import "server-only";
import type { Compared } from "@/lib/advice/differences";
import { answersSchema, readAnswers } from "@/lib/forms/answers";
import { formatDay } from "@/lib/present/dates";
import type { listComparable } from "@/lib/records/diary/loaders";
import { getFitting } from "@/lib/records/fittings/loaders";
import { currentSettings } from "@/lib/records/settings/loaders";
import { getSpecRevision } from "@/lib/records/specs/loaders";
import type { Reader } from "@/lib/words/reader";
import { offerOf } from "@/lib/workshop/settings";
import { contentOf } from "../../../specs/_parts/loaders";

export interface SideOption {
	/** As it stands in the address. */
	readonly value: string;
	readonly label: string;
}

/** Everything of a player that can be compared, newest fitting first. */
export const sideOptions = (
	fittings: Awaited<ReturnType<typeof listComparable>>,
	reader: Reader,
): SideOption[] =>
	fittings.flatMap(({ number, createdAt, specs }) => [
		...specs.map((spec) => ({
			value: `spec-${spec.number}-${spec.revision}`,
			label: reader.say("compare.spec", {
				number: String(spec.number),
				revision: String(spec.revision),
				date: formatDay(spec.createdAt, reader),
			}),
		})),
		{
			value: `fitting-${number}`,
			label: reader.say("compare.fitting", {
				number: String(number),
				date: formatDay(createdAt, reader),
			}),
		},
	]);

/** What an option stands for. The option is one of the player's own; it is there, as none is deleted. */
export async function sideOf({ value }: SideOption): Promise<Compared> {
	const [kind, number, revision] = value.split("-");
	if (kind === "spec") {
		const saved = await getSpecRevision(Number(number), Number(revision));
		if (saved === null) throw new Error(`there is no ${value}`);
		return { kind: "spec", content: contentOf(saved.content) };
	}
	const fitting = await getFitting(Number(number));
	if (fitting === null) throw new Error(`there is no ${value}`);
	const { input } = readAnswers(
		answersSchema.parse(fitting.answers),
		"metric",
		fitting.takenWishes,
	);
	return {
		kind: "fitting",
		input: { ...input, workshop: offerOf(await currentSettings()) },
	};
}
