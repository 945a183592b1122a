import type { Catalogue } from "./catalogue";

/** What a workshop offers differently for different games. */
export type ByGame = Pick<Catalogue, "shaftWoods" | "layouts">;

/** What both name, in the first's order; what either names where they have nothing in common. */
function inCommon<Id>(one: readonly Id[], other: readonly Id[]): readonly Id[] {
	const both = one.filter((id) => other.includes(id));
	return both.length > 0 ? both : [...new Set([...one, ...other])];
}

const joined = <Id>(
	one: readonly Id[],
	other: readonly Id[],
): readonly Id[] => [...new Set([...one, ...other])];

/**
 * What cues for two games may be made of: `shared` for one cue for both, and each game's own catalogue
 * with what the shared one adds to it. Whatever the one cue may be, an own cue may be as well: otherwise
 * the one could come out ahead of a cue made for the game alone.
 */
export function sharedOffer(
	one: Catalogue,
	other: Catalogue,
): { readonly shared: ByGame; readonly own: readonly [Catalogue, Catalogue] } {
	const shared: ByGame = {
		shaftWoods: inCommon(one.shaftWoods, other.shaftWoods),
		layouts: inCommon(one.layouts, other.layouts),
	};
	const own = (catalogue: Catalogue): Catalogue => ({
		...catalogue,
		shaftWoods: joined(catalogue.shaftWoods, shared.shaftWoods),
		layouts: joined(catalogue.layouts, shared.layouts),
	});
	return { shared, own: [own(one), own(other)] };
}
