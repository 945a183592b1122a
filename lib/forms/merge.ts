import { type Answers, FIELD_NAMES, type FieldName } from "./fields";

export interface Merged {
	readonly answers: Answers;
	/** Fields both sides changed, differently: mine is kept, theirs is told. */
	readonly conflicts: readonly {
		readonly field: FieldName;
		readonly theirs: string | readonly string[];
	}[];
}

const same = (a: Answers[FieldName], b: Answers[FieldName]): boolean =>
	JSON.stringify(a ?? "") === JSON.stringify(b ?? "");

/** Three-way merge, field by field: what only one side changed is taken, a clash keeps mine. */
export function mergeAnswers({
	base,
	mine,
	theirs,
}: {
	base: Answers;
	mine: Answers;
	theirs: Answers;
}): Merged {
	const answers: Answers = {};
	const conflicts: { field: FieldName; theirs: string | readonly string[] }[] =
		[];
	for (const field of FIELD_NAMES) {
		const iChanged = !same(base[field], mine[field]);
		const theyChanged = !same(base[field], theirs[field]);
		if (iChanged && theyChanged && !same(mine[field], theirs[field]))
			conflicts.push({ field, theirs: theirs[field] ?? "" });
		const kept = iChanged ? mine[field] : theirs[field];
		if (kept !== undefined) answers[field] = kept;
	}
	return { answers, conflicts };
}
