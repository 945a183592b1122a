import type { WoodId } from "@/lib/reference/woods";
import { parseMass } from "@/lib/units/parse";
import type { UnitSystem } from "@/lib/units/quantity";
import { parseDensity, parseVolume } from "@/lib/units/solids";
import { SETTING_LIMITS as LIMIT } from "@/lib/workshop/checks";
import type { Stock, StockBillet, StockWood } from "@/lib/workshop/stock";
import {
	FieldReader,
	type FormRead,
	mmText,
	numberText,
	readForm,
} from "./form";

/** A billet by its density, or by mass and volume; all three given, the density read off is taken. */
export interface BilletForm {
	readonly label: string;
	readonly density: string;
	readonly mass: string;
	readonly volume: string;
	/** Percent; empty: settled at 12. */
	readonly moisture: string;
}

export interface StockWoodForm {
	readonly wood: WoodId;
	readonly grade: string;
	readonly rings: string;
	readonly count: string;
	readonly billets: BilletForm[];
	readonly statedMean: string;
	readonly statedSd: string;
}

export interface StockForm {
	readonly woods: StockWoodForm[];
}

export const NEW_BILLET: BilletForm = {
	label: "",
	density: "",
	mass: "",
	volume: "",
	moisture: "",
};

export const newStockWood = (wood: WoodId): StockWoodForm => ({
	wood,
	grade: "",
	rings: "",
	count: "",
	billets: [NEW_BILLET],
	statedMean: "",
	statedSd: "",
});

const kgM3Text = (kgM3: number, mark: string): string =>
	`${numberText(kgM3, mark)} kg/m³`;

const billetForm = (billet: StockBillet, mark: string): BilletForm => ({
	label: billet.label,
	moisture:
		billet.moisturePct === null ? "" : numberText(billet.moisturePct, mark),
	...("densityKgM3" in billet
		? { density: kgM3Text(billet.densityKgM3, mark), mass: "", volume: "" }
		: {
				density: "",
				mass: `${numberText(billet.massG, mark)} g`,
				volume: `${numberText(billet.volumeCm3, mark)} cm³`,
			}),
});

/** `mark`: the reader's decimal mark. */
export const stockForm = ({ woods }: Stock, mark = "."): StockForm => ({
	woods: woods.map((entry) => ({
		wood: entry.wood,
		grade: entry.grade,
		rings:
			entry.ringSpacingMm === null ? "" : mmText(entry.ringSpacingMm, mark),
		count: String(entry.count),
		billets: entry.billets.map((billet) => billetForm(billet, mark)),
		statedMean: entry.stated ? kgM3Text(entry.stated.kgM3, mark) : "",
		statedSd: entry.stated ? kgM3Text(entry.stated.sd, mark) : "",
	})),
});

const isEmpty = ({ label, density, mass, volume, moisture }: BilletForm) =>
	[label, density, mass, volume, moisture].every((text) => text.trim() === "");

export function readStock(
	form: StockForm,
	system: UnitSystem,
): FormRead<"stock"> {
	const fields = new FieldReader(system);
	const places: number[][] = [];
	const woods = form.woods.map((entry, i): StockWood => {
		const at = `woods.${i}`;
		const density = (
			name: "statedMean" | "statedSd",
			bounds: readonly [number, number],
		) =>
			fields.optional(entry[name], (text) =>
				fields.solid(`${at}.${name}`, text, { bounds, parse: parseDensity }),
			);
		const kgM3 = density("statedMean", LIMIT.densityKgM3);
		const sd = density("statedSd", LIMIT.densitySd);
		if ((kgM3 === null) !== (sd === null))
			fields.refuse(`${at}.${kgM3 === null ? "statedMean" : "statedSd"}`, {
				code: "both-or-neither",
				field: `${at}.stated`,
				value: null,
			});
		const kept = entry.billets.flatMap((billet, j) =>
			isEmpty(billet) ? [] : [j],
		);
		places.push(kept);
		const billets = kept.map((j) =>
			readBillet(entry.billets[j] as BilletForm, `${at}.billets.${j}`, fields),
		);
		return {
			wood: entry.wood,
			grade: entry.grade.trim(),
			ringSpacingMm: fields.optional(entry.rings, (text) =>
				fields.lengthMm(`${at}.rings`, text, LIMIT.ringSpacingMm),
			),
			count:
				fields.optional(entry.count, (text) =>
					fields.number(`${at}.count`, text, LIMIT.count),
				) ?? billets.length,
			billets,
			stated: kgM3 === null || sd === null ? null : { kgM3, sd },
		};
	});
	return readForm({
		kind: "stock",
		fields,
		content: { basis: "workshop", woods },
		pathOf: (field) =>
			field
				.replace(
					/^woods\.(\d+)\.billets\.(\d+)/,
					(_, i, j) =>
						`woods.${i}.billets.${places[Number(i)]?.[Number(j)] ?? j}`,
				)
				.replace(/^(woods\.\d+)$/, "$1.grade")
				.replace(/ringSpacingMm$/, "rings")
				.replace(/densityKgM3$/, "density")
				.replace(/moisturePct$/, "moisture"),
	});
}

function readBillet(
	billet: BilletForm,
	at: string,
	fields: FieldReader,
): StockBillet {
	const shared = {
		label: billet.label.trim(),
		moisturePct: fields.optional(billet.moisture, (text) =>
			fields.number(`${at}.moisture`, text, LIMIT.moisturePct),
		),
	};
	if (billet.density.trim() !== "")
		return {
			...shared,
			densityKgM3: fields.solid(`${at}.density`, billet.density, {
				bounds: LIMIT.densityKgM3,
				parse: parseDensity,
			}),
		};
	const missing = (["mass", "volume"] as const).find(
		(name) => billet[name].trim() === "",
	);
	if (missing !== undefined)
		fields.refuse(`${at}.${missing}`, {
			code: "density-or-both",
			field: `${at}.${missing}`,
			value: null,
		});
	const [least, most] = LIMIT.massG;
	const mass = parseMass(billet.mass, {
		system: fields.system,
		minG: least,
		maxG: most,
		field: `${at}.massG`,
	});
	if (!mass.ok && missing !== "mass") fields.refuse(`${at}.mass`, mass.refusal);
	return {
		...shared,
		massG: mass.ok ? mass.g : least,
		volumeCm3:
			fields.optional(billet.volume, (text) =>
				fields.solid(`${at}.volume`, text, {
					bounds: LIMIT.volumeCm3,
					parse: parseVolume,
				}),
			) ?? LIMIT.volumeCm3[0],
	};
}
