import { sourced } from "./constant";
import type { SourcedConstant } from "./estimate";

export type MetalId =
	| "brass"
	| "stainless-steel"
	| "aluminium"
	| "lead"
	| "tungsten-alloy";

export interface Metal {
	readonly id: MetalId;
	readonly name: string;
	readonly densityKgM3: SourcedConstant;
	readonly modulusGPa: SourcedConstant;
}

const DENSITY = "kg/m³";

export const METALS: Readonly<Record<MetalId, Metal>> = {
	brass: {
		id: "brass",
		name: "Brass",
		densityKgM3: sourced({
			value: 8470,
			unit: DENSITY,
			sd: 20,
			source: "metal-data-sheets",
			locator: "CW614N 8.47; C36000 8.49",
		}),
		modulusGPa: sourced({
			value: 97,
			unit: "GPa",
			sd: 2,
			source: "metal-data-sheets",
			locator: "CW614N, C36000",
		}),
	},
	"stainless-steel": {
		id: "stainless-steel",
		name: "Stainless steel",
		densityKgM3: sourced({
			value: 8000,
			unit: DENSITY,
			sd: 40,
			source: "metal-data-sheets",
			locator: "303: 8.00, also 8.03 and 7.89",
		}),
		modulusGPa: sourced({
			value: 193,
			unit: "GPa",
			sd: 4,
			source: "metal-data-sheets",
			locator: "303",
		}),
	},
	aluminium: {
		id: "aluminium",
		name: "Aluminium",
		densityKgM3: sourced({
			value: 2700,
			unit: DENSITY,
			sd: 10,
			source: "metal-data-sheets",
			locator: "6061-T6",
		}),
		modulusGPa: sourced({
			value: 69,
			unit: "GPa",
			sd: 1,
			source: "metal-data-sheets",
			locator: "6061-T6",
		}),
	},
	lead: {
		id: "lead",
		name: "Lead",
		densityKgM3: sourced({
			value: 11340,
			unit: DENSITY,
			sd: 20,
			source: "metal-data-sheets",
			locator: "periodic-table data 11.34",
		}),
		modulusGPa: sourced({
			value: 16,
			unit: "GPa",
			sd: 1,
			source: "metal-data-sheets",
			locator: "lead",
			fromMemory: true,
		}),
	},
	"tungsten-alloy": {
		id: "tungsten-alloy",
		name: "Tungsten heavy alloy, 90 %",
		densityKgM3: sourced({
			value: 17075,
			unit: DENSITY,
			sd: 130,
			source: "tungsten-alloy-b777",
			locator: "class 1: 16.85–17.30, midpoint",
		}),
		modulusGPa: sourced({
			value: 300,
			unit: "GPa",
			sd: 25,
			source: "tungsten-alloy-b777",
			locator: "275–360 for the classes",
			fromMemory: true,
		}),
	},
};

/** Dense tip leather. */
export const TIP_LEATHER = {
	densityKgM3: sourced({
		value: 930,
		unit: DENSITY,
		sd: 50,
		source: "project-judgement",
		standing: "assumed",
		locator: "dense sole and tip leather 860–1000",
		fromMemory: true,
	}),
	modulusGPa: sourced({
		value: 0.1,
		unit: "GPa",
		sd: 0.05,
		source: "project-judgement",
		standing: "assumed",
		locator: "leather carries next to no bending",
	}),
} as const;

/** Wood-flour phenolic moulding. */
export const PHENOLIC = {
	densityKgM3: sourced({
		value: 1330,
		unit: DENSITY,
		sd: 40,
		source: "plastics-handbook-2006",
		locator: "table 3.9",
	}),
	modulusGPa: sourced({
		value: 7,
		unit: "GPa",
		sd: 1,
		source: "plastics-handbook-2006",
		locator: "phenolic, wood flour",
		fromMemory: true,
	}),
} as const;
