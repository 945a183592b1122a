/** Told apart by dash as well as by colour. */
const STROKES = [
	{ stroke: "var(--chalk)", strokeWidth: 3, strokeDasharray: undefined },
	{ stroke: "var(--brass)", strokeWidth: 3, strokeDasharray: "10 5" },
	{ stroke: "var(--soft)", strokeWidth: 3, strokeDasharray: "2 5" },
] as const;

export const strokeOf = (index: number) =>
	STROKES[index % STROKES.length] ?? STROKES[0];
