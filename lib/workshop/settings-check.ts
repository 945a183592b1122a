import { checkedCatalogue } from "@/lib/advice/catalogue";
import { FITTING_LIMITS } from "@/lib/cue/validity";
import {
	accept,
	type Outcome,
	type Refusal,
	refuse,
} from "@/lib/numerics/outcome";
import { GAMES, type GameId } from "@/lib/reference/rules";
import { WOODS } from "@/lib/reference/woods";
import {
	count,
	SETTING_LIMITS as LIMIT,
	listedTwice,
	text,
	webAddress,
	whole,
	within,
} from "./checks";
import type { LeadTimes } from "./lead-time";
import { pricesRefusals } from "./prices-check";
import type {
	Header,
	SettingContents,
	SettingKind,
	WorkshopCatalogue,
} from "./settings";
import { billetKgM3, type Stock } from "./stock";
import { isIsoDate } from "./working-days";

type Found = readonly Refusal[];

const header = (h: Header): Found => [
	...text("header.name", h.name, "name"),
	...count("header.lines", h.lines, [0, 8]),
	...h.lines.flatMap((line, i) => text(`header.lines.${i}`, line, "line")),
	...text("header.contact", h.contact, "contact"),
	...text("header.publicAddress", h.publicAddress, "address"),
	...webAddress("header.publicAddress", h.publicAddress),
	...text("header.warrantyText", h.warrantyText, "long"),
];

function catalogue(c: WorkshopCatalogue): Found {
	const { tips, cases, ferruleMetals, jointMetals, veneerWoods } = c;
	// Offers, woods and ranges are held to what the search can take, a game at a time, said once.
	const offered = (Object.keys(GAMES) as GameId[]).flatMap((gameId) => {
		const checked = checkedCatalogue({ ...c, ...c.games[gameId] });
		return checked.ok
			? []
			: checked.refusals.map((refusal) => ({
					...refusal,
					field: refusal.field.replace(
						/^catalogue\.(shaftWoods|layouts)/,
						`catalogue.games.${gameId}.$1`,
					),
				}));
	});
	const fields = new Set<string>();
	return [
		...offered.filter(({ field, value }) => {
			const key = `${field} ${value}`;
			return !fields.has(key) && fields.add(key);
		}),
		...(Object.keys(GAMES) as GameId[]).flatMap((gameId) => [
			...listedTwice(
				`catalogue.games.${gameId}.shaftWoods`,
				c.games[gameId].shaftWoods,
			),
			...listedTwice(
				`catalogue.games.${gameId}.layouts`,
				c.games[gameId].layouts,
			),
		]),
		...listedTwice(
			"catalogue.buttWoods",
			c.buttWoods.map(({ id }) => id),
		),
		...listedTwice(
			"catalogue.splices",
			c.splices.map(({ id }) => id),
		),
		...listedTwice("catalogue.taperShapes", c.taperShapes),
		...listedTwice("catalogue.veneerWoods", veneerWoods),
		...veneerWoods.flatMap((wood, i) =>
			WOODS[wood].uses.includes("veneer")
				? []
				: [
						{
							code: "wood-not-for-part",
							field: `catalogue.veneerWoods.${i}`,
							value: wood,
							facts: { part: "veneerWoods" },
						},
					],
		),
		...count("catalogue.ferruleMetals", ferruleMetals, [1, 10]),
		...listedTwice("catalogue.ferruleMetals", ferruleMetals),
		...count("catalogue.jointMetals", jointMetals, [1, 10]),
		...listedTwice("catalogue.jointMetals", jointMetals),
		...count("catalogue.tips", tips, [1, 30]),
		...listedTwice(
			"catalogue.tips",
			tips.map(({ name }) => name),
		),
		...tips.flatMap(({ name, heightMm }, i) => [
			...text(`catalogue.tips.${i}.name`, name, "named"),
			...within(
				`catalogue.tips.${i}.heightMm`,
				heightMm,
				FITTING_LIMITS.tipHeightMm,
			),
		]),
		...count("catalogue.cases", cases, [0, 30]),
		...listedTwice(
			"catalogue.cases",
			cases.map(({ name }) => name),
		),
		...cases.flatMap(({ name, longestPieceMm }, i) => [
			...text(`catalogue.cases.${i}.name`, name, "named"),
			...within(
				`catalogue.cases.${i}.longestPieceMm`,
				longestPieceMm,
				LIMIT.longestPieceMm,
			),
		]),
		...count("catalogue.endPiecesMm", c.endPiecesMm, [0, 20]),
		...listedTwice("catalogue.endPiecesMm", c.endPiecesMm.map(String)),
		...c.endPiecesMm.flatMap((lengthMm, i) =>
			within(`catalogue.endPiecesMm.${i}`, lengthMm, FITTING_LIMITS.endPieceMm),
		),
	];
}

const stock = ({ woods }: Stock): Found => [
	...count("stock.woods", woods, [0, 500]),
	...listedTwice(
		"stock.woods",
		woods.map(({ wood, grade }) => `${wood} ${grade}`.trim()),
	),
	...woods.flatMap((entry, i) => {
		const field = `stock.woods.${i}`;
		const { billets, stated, ringSpacingMm } = entry;
		return [
			...text(`${field}.grade`, entry.grade, "label"),
			...(ringSpacingMm === null
				? []
				: within(`${field}.ringSpacingMm`, ringSpacingMm, LIMIT.ringSpacingMm)),
			...count(`${field}.billets`, billets, [0, 500]),
			...whole(`${field}.count`, entry.count, LIMIT.count),
			...(stated === null
				? []
				: [
						...within(`${field}.stated.kgM3`, stated.kgM3, LIMIT.densityKgM3),
						...within(`${field}.stated.sd`, stated.sd, LIMIT.densitySd),
					]),
			...billets.flatMap((billet, j) => {
				const at = `${field}.billets.${j}`;
				const readings = [
					...text(`${at}.label`, billet.label, "label"),
					...(billet.moisturePct === null
						? []
						: within(
								`${at}.moisturePct`,
								billet.moisturePct,
								LIMIT.moisturePct,
							)),
					...("massG" in billet
						? [
								...within(`${at}.massG`, billet.massG, LIMIT.massG),
								...within(`${at}.volumeCm3`, billet.volumeCm3, LIMIT.volumeCm3),
							]
						: []),
				];
				return readings.length > 0
					? readings
					: within(`${at}.densityKgM3`, billetKgM3(billet), LIMIT.densityKgM3);
			}),
		];
	}),
];

const leadTimes = (t: LeadTimes): Found => [
	...(t.openWeekdays.length === 0
		? [
				{
					code: "too-few",
					field: "leadTimes.openWeekdays",
					value: 0,
					min: 1,
				},
			]
		: []),
	...listedTwice("leadTimes.openWeekdays", t.openWeekdays.map(String)),
	...t.openWeekdays.flatMap((day, i) =>
		whole(`leadTimes.openWeekdays.${i}`, day, LIMIT.weekday),
	),
	...count("leadTimes.closed", t.closed, [0, 400]),
	...t.closed.flatMap(({ from, to, note }, i) => {
		const field = `leadTimes.closed.${i}`;
		const wrong = (["from", "to"] as const).flatMap((end) => {
			const value = end === "from" ? from : to;
			return isIsoDate(value)
				? []
				: [{ code: "not-a-date", field: `${field}.${end}`, value }];
		});
		return [
			...wrong,
			...(wrong.length === 0 && to < from
				? [
						{
							code: "dates-crossed",
							field: `${field}.to`,
							value: to,
							facts: { from },
						},
					]
				: []),
			...text(`${field}.note`, note, "label"),
		];
	}),
	...within("leadTimes.cuesPerWeek", t.cuesPerWeek, LIMIT.cuesPerWeek),
	...(
		[
			"baseDays",
			"addedWeightDays",
			"pointsBetweenDays",
			"frontWedgeDays",
			"allRoundWedgeDays",
			"veneerDays",
			"endPieceDays",
		] as const
	).flatMap((name) => within(`leadTimes.${name}`, t[name], LIMIT.days)),
	...(["spliceDays", "layoutDays", "buttWoodDays"] as const).flatMap((name) =>
		Object.entries(t[name]).flatMap(([choice, days]) =>
			within(`leadTimes.${name}.${choice}`, days, LIMIT.days),
		),
	),
];

const CHECKS: {
	readonly [K in SettingKind]: (content: SettingContents[K]) => Found;
} = {
	header,
	catalogue,
	stock,
	prices: pricesRefusals,
	"lead-times": leadTimes,
};

/**
 * A setting as it may be saved, or everything wrong with it: field, value and bound. Fields are named
 * from the settings down, "prices.rows.3.labourMinor".
 */
export function checkedSetting<K extends SettingKind>(
	kind: K,
	content: SettingContents[K],
): Outcome<SettingContents[K]> {
	const found = CHECKS[kind](content);
	return found.length === 0 ? accept(content) : refuse(...found);
}
