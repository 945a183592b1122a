import { mostGained } from "./against";
import type { Argued, Reason } from "./argument";
import type { Candidate } from "./evaluate";
import type { Prepared } from "./prepare";
import { type Refining, type Valued, valued } from "./refine";

type Choice = Exclude<
	Argued["choice"],
	"length" | "mass" | "butt" | "tip" | "balance"
>;

const FIELD = {
	"butt-wood": "buttWood",
	splice: "splice",
	layout: "layout",
	taper: "taperShape",
} as const;

/**
 * Wood, splice, layout and taper against the best of the same cue with another: what that would gain is
 * the argument against, what it would lose the reason for. Where no other is offered the wish, or the
 * catalogue, is the reason; where no other can be brought to the weight, that is.
 */
export function argueChoices(p: {
	prepared: Prepared;
	refining: Refining;
	best: Valued;
}): readonly Argued[] {
	const { prepared, refining, best } = p;
	const { wishes } = prepared.needs.input;
	const { compiled } = refining;
	return (Object.keys(FIELD) as Choice[]).map((choice): Argued => {
		const field = FIELD[choice];
		const chosen = best.candidate.request[field];
		const base = { choice, value: chosen, forBench: { [field]: chosen } };
		const offers = offersOf(prepared, choice).filter((id) => id !== chosen);
		if (offers.length === 0)
			return {
				...base,
				forPlayer:
					wishes[field] === undefined
						? plain("only-one-offered", "common-practice")
						: plain("wish", "wish"),
				against: null,
			};
		const other = bestOf(refining, best.candidate, field, offers);
		if (other === null)
			return {
				...base,
				forPlayer: plain("no-other-reaches-weight", "derived"),
				against: null,
			};
		const own = best.measured.row;
		const its = other.measured.row;
		const instead = other.candidate.request[field];
		const overallCost = best.overall - other.overall;
		const lost = mostGained(compiled, its, own);
		const gained = mostGained(compiled, own, its);
		return {
			...base,
			forPlayer: {
				...plain(
					lost ? `better-${lost.criterion}` : "no-difference",
					"derived",
				),
				facts: {
					instead,
					overallCost,
					...(lost ? { from: lost.from, to: lost.to } : {}),
				},
			},
			against: gained && { ...gained, moveTo: instead, overallCost },
		};
	});
}

const plain = (code: string, basis: Reason["basis"]): Reason => ({
	code,
	basis,
	sources: ["project-judgement"],
	facts: {},
});

const offersOf = ({ catalogue }: Prepared, choice: Choice): readonly string[] =>
	({
		"butt-wood": catalogue.buttWoods.map(({ id }) => id),
		splice: catalogue.splices.map(({ id }) => id),
		layout: catalogue.layouts,
		taper: catalogue.taperShapes,
	})[choice];

/** The same cue with each offer in turn; a weight that wood cannot give is left to the wood. */
function bestOf(
	refining: Refining,
	candidate: Candidate,
	field: (typeof FIELD)[Choice],
	offers: readonly string[],
): Valued | null {
	let best: Valued | null = null;
	for (const offer of offers) {
		const request = { ...candidate.request, [field]: offer };
		for (const forwardMm of new Set([candidate.forwardMm, 0])) {
			const tried = valued(refining, { ...candidate, request, forwardMm });
			if (tried && (best === null || tried.overall > best.overall))
				best = tried;
		}
	}
	return best;
}
