import type { Advice } from "@/lib/advice/advise";
import { type GripPlace, gripZone } from "@/lib/advice/grip-zone";
import {
	CLOSURE_TARGET_MM,
	CLOSURE_TOLERANCE_MM,
} from "@/lib/advice/judgement";
import type { Outcome } from "@/lib/numerics/outcome";
import { ID1_CARD, pixelsPerMm, printScaleRatio } from "@/lib/player/gauge";
import { LARGEST_GRIP_SHARE } from "@/lib/player/hand";
import { band90 } from "@/lib/reference/estimate";
import {
	HANDLE_STUDIES,
	HARD_GRIP_SHARE_OF_HAND,
	UNPUBLISHED_GAP_MM,
} from "@/lib/reference/handles";
import type { Reader } from "@/lib/words/reader";
import { formatLength, formatLengthBand, formatPercent } from "./figures";
import { citationTitle, inSentence } from "./labels";
import { cautionText } from "./notices";
import { sayOr } from "./say-or";

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

export const closureWords = (mm: number, reader: Reader): string =>
	Math.abs(mm) < MEET_MM
		? reader.say("gauge.meet")
		: reader.say(mm > 0 ? "gauge.gap" : "gauge.overlap", {
				by: formatLength(Math.abs(mm), reader, "gap"),
			});

/** How the light ring closes round the advised butt along the whole grip zone. */
export function closureView(advice: Advice, reader: Reader): ClosureView {
	const { say } = reader;
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
		lead: say("gauge.lead", {
			guessed: grip.readingCount === 0 ? "yes" : "no",
			ring,
			butt: formatLength(butt.figure.value, reader, "diameter"),
			closure: inSentence.closure(butt.closure, reader),
		}),
		places: places.map(({ place, fromButtMm, diameterMm, closureMm }) => {
			const off = closureMm.value - target;
			return {
				place,
				name: say(`gauge.place.${place}`),
				fromButt: formatLength(fromButtMm, reader),
				diameter: formatLength(diameterMm, reader, "diameter"),
				closure: closureWords(closureMm.value, reader),
				band: formatLengthBand(band90(closureMm), reader, "gap"),
				verdict:
					Math.abs(off) <= CLOSURE_TOLERANCE_MM
						? say("gauge.asWanted")
						: off > 0
							? say("gauge.moreOpen")
							: say("gauge.further"),
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

/** Published research on handles: for hard grips and pinches, so beside the figure, never in it. */
export function handleContext({ body }: Advice, reader: Reader): HandleContext {
	const { say } = reader;
	const hand = body.handLengthMm.value;
	const [low, high] = UNPUBLISHED_GAP_MM;
	const across = (mm: number) => formatLength(mm, reader, "diameter");
	return {
		lead: say("gauge.handles.lead"),
		rows: [
			{
				what: say("gauge.handles.share", {
					purpose: say("gauge.handles.purpose.greatest-force"),
					share: formatPercent(HARD_GRIP_SHARE_OF_HAND, reader, 1),
				}),
				diameter: across(HARD_GRIP_SHARE_OF_HAND * hand),
				source: citationTitle("kong-lowe-2005", reader),
			},
			...HANDLE_STUDIES.map(({ purpose, diameterMm, locator, source }) => ({
				what: say("gauge.handles.study", {
					purpose: say(`gauge.handles.purpose.${purpose}`),
					locator: sayOr(
						`gauge.handles.locator.${purpose}-${source}`,
						locator,
						reader,
					),
				}),
				diameter:
					diameterMm[0] === diameterMm[1]
						? across(diameterMm[0])
						: formatLengthBand(
								{ low: diameterMm[0], high: diameterMm[1] },
								reader,
								"diameter",
							),
				source: citationTitle(source, reader),
			})),
			{
				what: say("gauge.handles.largest", {
					share: formatPercent(LARGEST_GRIP_SHARE, reader, 1),
				}),
				diameter: across(LARGEST_GRIP_SHARE * hand),
				source: citationTitle("pheasant-bodyspace", reader),
			},
		],
		close: say("gauge.handles.close", {
			range: formatLengthBand({ low, high }, reader, "diameter"),
		}),
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
			text: reader.say("gauge.printTrue", {
				share: formatPercent(ratio.value, reader, 1),
			}),
		};
	return {
		ok: false,
		text: reader.say("gauge.printOff", {
			share: formatPercent(readMm / 100, reader, 1),
			range: formatLengthBand(
				{
					low: ratio.refusals[0]?.min ?? 100,
					high: ratio.refusals[0]?.max ?? 100,
				},
				reader,
				"diameter",
			),
		}),
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
