import type { CueFigures, RackCue } from "@/lib/trial/preference";

const MIDDLE: CueFigures = {
	lengthMm: 1460,
	massG: 515,
	buttDiameterMm: 29,
	tipDiameterMm: 9.5,
	balanceFromButtMm: 430,
};

/** A cue of an invented rack, in the middle of it but for what is said. */
export const rackCue = (
	id: string,
	change: Partial<CueFigures> = {},
): RackCue => ({ id, name: id.toUpperCase(), ...MIDDLE, ...change });

/** Five invented cues: light, middle, heavy, long, thin. */
export const RACK: readonly RackCue[] = [
	rackCue("light", { massG: 465 }),
	rackCue("middle"),
	rackCue("heavy", { massG: 565 }),
	rackCue("long", { lengthMm: 1520 }),
	rackCue("thin", { buttDiameterMm: 26.5 }),
];
