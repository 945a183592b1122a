import { sourced } from "@/lib/reference/constant";

/** Restitution of a leather tip: 0.73, measured range 0.71–0.75 for medium leather. */
export const LEATHER_RESTITUTION = sourced({
	value: 0.73,
	sd: 0.02,
	unit: "1",
	source: "alciatore-a30",
	locator: "inputs; range from the author's tip-efficiency page",
});

/** Restitution of a hard phenolic tip: 0.87 in TP A.30, 0.85 in TP B.22, range 0.81–0.87. */
export const PHENOLIC_RESTITUTION = sourced({
	value: 0.85,
	sd: 0.02,
	unit: "1",
	source: "alciatore-b22",
	locator: "inputs; range from the author's tip-efficiency page",
});

/** Contact time of a leather tip: 1.2 ms in TP B.22; mostly 1–2 ms elsewhere, hence the spread. */
export const LEATHER_CONTACT_MS = sourced({
	value: 1.2,
	sd: 0.25,
	unit: "ms",
	source: "alciatore-b22",
	locator: "inputs; range from the author's contact-time page",
});

/** Largest contact offset that holds, as a share of the ball radius. Measured up to 0.55. */
export const MISCUE_OFFSET = sourced({
	value: 0.5,
	sd: 0.025,
	unit: "1",
	source: "alciatore-2-1",
	locator: "general rule 0.5, effective offsets to 0.55 measured",
});

/** Half the width of a United States ten-cent coin, a usual shape of a tip's dome. */
export const DIME_RADIUS = sourced({
	value: (0.705 / 2) * 25.4,
	sd: 0,
	unit: "mm",
	source: "alciatore-b1",
	locator: "dome radii",
});

/** Half the width of a United States five-cent coin, the flatter usual shape. */
export const NICKEL_RADIUS = sourced({
	value: (0.835 / 2) * 25.4,
	sd: 0,
	unit: "mm",
	source: "alciatore-b1",
	locator: "dome radii",
});
