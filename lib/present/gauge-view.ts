import type { Advice } from "@/lib/advice/advise";
import { type GripPlace, gripZone } from "@/lib/advice/grip-zone";
import {
	CLOSURE_TARGET_MM,
	CLOSURE_TOLERANCE_MM,
} from "@/lib/advice/judgement";
import type { Outcome } from "@/lib/numerics/outcome";
import { ID1_CARD, pixelsPerMm, printScaleRatio } from "@/lib/player/gauge";
import { LARGEST_GRIP_SHARE } from "@/lib/player/hand";
import { CITATIONS } from "@/lib/reference/citations";
import { band90 } from "@/lib/reference/estimate";
import {
	HANDLE_STUDIES,
	HARD_GRIP_SHARE_OF_HAND,
	type HandleStudy,
	UNPUBLISHED_GAP_MM,
} from "@/lib/reference/handles";
import type { Reader } from "@/lib/words/reader";
import { formatLength, formatLengthBand, formatPercent } from "./figures";
import { inSentence } from "./labels";
import { cautionText } from "./notices";

/** Diameters a ring gauge covers, mm: past any light ring a hand makes round a butt. */
export const GAUGE_MM = { from: 15, to: 50, step: 0.5 } as const;

/** Closer than this the pads are said to meet, mm of arc. */
const MEET_MM = 0.5;

export interface ClosurePlace {
	readonly place: GripPlace["place"];
	readonly name: string;
	readonly fromButt: string;
	readonly diameter: string;
	readonly closure: string;
	readonly band: string;
	readonly verdict: string;
	/** To scale, for the picture. */
	readonly diameterMm: number;
	/** How far round the cue the ring goes, deg; past 360 the fingers overlap. */
	readonly ringDeg: number;
}

export interface ClosureView {
	readonly lead: string;
	readonly places: readonly ClosurePlace[];
}

const PLACE_NAMES: Readonly<Record<GripPlace["place"], string>> = {
	back: "Hand slid back",
	usual: "Usual grip",
	forward: "Hand slid forward",
};

export const closureWords = (mm: number, reader: Reader): string =>
	Math.abs(mm) < MEET_MM
		? "pads just meet"
		: `${formatLength(Math.abs(mm), reader, "gap")} ${mm > 0 ? "gap" : "overlap"}`;

/** How the light ring closes round the advised butt along the whole grip zone. */
export function closureView(advice: Advice, reader: Reader): ClosureView {
	const { butt, length, grip } = advice;
	const target = CLOSURE_TARGET_MM[butt.closure];
	const places = gripZone({
		grip,
		lengthMm: length.value,
		gripFromButtMm: length.value - butt.gripStationMm,
		tipDiameterMm: advice.tip.value,
		buttDiameterMm: butt.figure.value,
		taperShape: advice.build.request.taperShape,
	});
	const ring = formatLength(grip.circleMm.value, reader, "diameter");
	return {
		lead: `A ${grip.readingCount === 0 ? "guessed " : ""}ring of ${ring}, held lightly on a butt of ${formatLength(butt.figure.value, reader, "diameter")}; wanted: ${inSentence.closure(butt.closure, reader)}.`,
		places: places.map(({ place, fromButtMm, diameterMm, closureMm }) => {
			const off = closureMm.value - target;
			return {
				place,
				name: PLACE_NAMES[place],
				fromButt: formatLength(fromButtMm, reader),
				diameter: formatLength(diameterMm, reader, "diameter"),
				closure: closureWords(closureMm.value, reader),
				band: formatLengthBand(band90(closureMm), reader, "gap"),
				verdict:
					Math.abs(off) <= CLOSURE_TOLERANCE_MM
						? "as wanted"
						: off > 0
							? "more open than wanted"
							: "closes further than wanted",
				diameterMm,
				ringDeg:
					Math.abs(closureMm.value) < MEET_MM
						? 360
						: (360 * grip.circleMm.value) / diameterMm,
			};
		}),
	};
}

/** What the readings taken so far ask for; nothing where none was taken. */
export const readingNotices = (
	{ grip }: Advice,
	reader: Reader,
): readonly string[] =>
	grip.readingCount === 0
		? []
		: grip.cautions.map((caution) => cautionText(caution, reader));

export interface HandleContext {
	readonly lead: string;
	readonly rows: readonly {
		readonly what: string;
		readonly diameter: string;
		readonly source: string;
	}[];
	readonly close: string;
}

const PURPOSE: Readonly<Record<HandleStudy["purpose"], string>> = {
	"greatest-force": "Gripping as hard as one can",
	"least-effort": "Pinching with the least effort",
	precision: "Fine work between the finger tips",
};

/** Published research on handles: for hard grips and pinches, so beside the figure, never in it. */
export function handleContext({ body }: Advice, reader: Reader): HandleContext {
	const hand = body.handLengthMm.value;
	const [low, high] = UNPUBLISHED_GAP_MM;
	const across = (mm: number) => formatLength(mm, reader, "diameter");
	return {
		lead: "The published figures are for hard grips and for pinching. A cue is held lightly, so none of them sets a butt: they are context.",
		rows: [
			{
				what: `${PURPOSE["greatest-force"]}, ${formatPercent(HARD_GRIP_SHARE_OF_HAND, reader, 1)} of hand length`,
				diameter: across(HARD_GRIP_SHARE_OF_HAND * hand),
				source: CITATIONS["kong-lowe-2005"].title,
			},
			...HANDLE_STUDIES.map(({ purpose, diameterMm, locator, source }) => ({
				what: `${PURPOSE[purpose]} (${locator})`,
				diameter:
					diameterMm[0] === diameterMm[1]
						? across(diameterMm[0])
						: formatLengthBand(
								{ low: diameterMm[0], high: diameterMm[1] },
								reader,
								"diameter",
							),
				source: CITATIONS[source].title,
			})),
			{
				what: `Largest ring of thumb and middle finger, about ${formatPercent(LARGEST_GRIP_SHARE, reader, 1)} of hand length (from memory)`,
				diameter: across(LARGEST_GRIP_SHARE * hand),
				source: CITATIONS["pheasant-bodyspace"].title,
			},
		],
		close: `Between about ${formatLengthBand({ low, high }, reader, "diameter")} lies what nobody has published for: there the light ring, a trial and the player decide.`,
	};
}

/** What a ruler laid on the printed 100 mm says of the print, in a sentence. */
export function printCheck(
	readMm: number,
	reader: Reader,
): { ok: boolean; text: string } {
	const ratio = printScaleRatio({ rulerMm: 100, readMm });
	if (ratio.ok)
		return {
			ok: true,
			text: `The print is at true size (${formatPercent(ratio.value, reader, 1)}).`,
		};
	return {
		ok: false,
		text: `The print is at ${formatPercent(readMm / 100, reader, 1)}, so every circle on it is off: print again at 100 %, “actual size”, without fitting to the page. The ruler should measure ${formatLengthBand({ low: ratio.refusals[0]?.min ?? 100, high: ratio.refusals[0]?.max ?? 100 }, reader, "diameter")}.`,
	};
}

/** Long side of a card on any screen, CSS pixels: 2 to 10 a millimetre; half a pixel is under 0.2 mm. */
export const CARD_ON_SCREEN_PX = { min: 171, max: 856, step: 0.5 } as const;

/** How a bank or identity card stands on the screen at a scale: lying where there is room, else upright. */
export function cardOnScreen(p: { pixelsPerMm: number; roomPx: number }): {
	readonly upright: boolean;
	readonly widthPx: number;
	readonly heightPx: number;
} {
	const long = ID1_CARD.widthMm * p.pixelsPerMm;
	const short = ID1_CARD.heightMm * p.pixelsPerMm;
	return long <= p.roomPx
		? { upright: false, widthPx: long, heightPx: short }
		: { upright: true, widthPx: short, heightPx: long };
}

/** The scale a matched card gives; refused where no screen has it. */
export const scaleFromCard = (longSidePx: number): Outcome<number> =>
	pixelsPerMm({ cardWidthPx: longSidePx });
