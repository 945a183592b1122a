import { BOUNDS, type QuantityBound } from "./bounds";
import { CHOICES, type MeasureName } from "./choices";

/**
 * Every question of a fitting, once: what it is called in stored answers, what kind of answer it
 * takes, and where the answer goes in the domain input. Pages, the typed-text schema and the demo
 * data all read this table.
 */
export type LengthUnit = "mm" | "cm" | "in" | "ft";
export type MassUnit = "g" | "oz";

interface LengthField {
	readonly kind: "length";
	readonly path: string;
	readonly bound: QuantityBound;
	/** Unit of a bare number, by the reader's unit system. */
	readonly bare: { readonly metric: LengthUnit; readonly trade: LengthUnit };
}
interface MassField {
	readonly kind: "mass";
	readonly path: string;
	readonly bound: QuantityBound;
	readonly bare: { readonly metric: MassUnit; readonly trade: MassUnit };
}
interface YearsField {
	readonly kind: "years";
	readonly path: string;
	readonly bound: QuantityBound;
}
interface ReadingsField extends Omit<LengthField, "kind"> {
	readonly kind: "readings";
}
interface ChoiceField {
	readonly kind: "choice";
	readonly path: string;
	readonly options: readonly string[];
}
interface ChoicesField {
	readonly kind: "choices";
	readonly path: string;
	readonly options: readonly string[];
}
interface YesNoField {
	readonly kind: "yes-no";
	readonly path: string;
}
/** An amount of money as people write it, "450" or "449.50"; stored in minor units. */
interface AmountField {
	readonly kind: "amount";
	readonly path: string;
	readonly bound: QuantityBound;
}
interface TextField {
	readonly kind: "text";
}
/** ISO date. Stays with the fitting's answers: it goes into no figure and no saved spec. */
interface DateField {
	readonly kind: "date";
}

export type Field =
	| LengthField
	| MassField
	| YearsField
	| ReadingsField
	| ChoiceField
	| ChoicesField
	| YesNoField
	| AmountField
	| TextField
	| DateField;

const body = { metric: "cm", trade: "in" } as const;
const fine = { metric: "mm", trade: "in" } as const;
const mass = { metric: "g", trade: "oz" } as const;

const length = (
	path: string,
	bound: QuantityBound,
	bare: LengthField["bare"],
): LengthField => ({
	kind: "length",
	path,
	bound,
	bare,
});
const choice = (path: string, options: readonly string[]): ChoiceField => ({
	kind: "choice",
	path,
	options,
});

export const noteOn = <Name extends MeasureName>(measure: Name) =>
	`${measure}Note` as const;

/** A line to write beside each measure: "boots on", "old fracture". */
const MEASURE_NOTES = Object.fromEntries(
	CHOICES.measure.map((measure) => [noteOn(measure), { kind: "text" }]),
) as Record<`${MeasureName}Note`, TextField>;

export const FIELDS = {
	measuredAlone: { kind: "yes-no", path: "measuredAlone" },
	notMeasured: {
		kind: "choices",
		path: "notMeasured",
		options: CHOICES.measure,
	},
	age: { kind: "years", path: "player.ageYears", bound: BOUNDS.ageYears },
	birthDate: { kind: "date" },
	sex: choice("player.sex", CHOICES.sex),
	stature: length("player.statureMm", BOUNDS.statureMm, body),
	armSpan: length("player.armSpanMm", BOUNDS.armSpanMm, body),
	handLength: length("player.handLengthMm", BOUNDS.handLengthMm, fine),
	shoulderToElbow: length(
		"player.shoulderToElbowMm",
		BOUNDS.shoulderToElbowMm,
		body,
	),
	elbowToGrip: length("player.elbowToGripMm", BOUNDS.elbowToGripMm, body),
	shoulderBreadth: length(
		"player.shoulderBreadthMm",
		BOUNDS.shoulderBreadthMm,
		body,
	),
	gripReadings: {
		kind: "readings",
		path: "player.gripCircleReadingsMm",
		bound: BOUNDS.gripCircleReadingMm,
		bare: fine,
	},
	hand: choice("hand", CHOICES.hand),
	stance: choice("stance.stance", CHOICES.stance),
	posture: choice("stance.posture", CHOICES.posture),
	bridgeArm: choice("stance.bridgeArm", CHOICES.bridgeArm),
	seated: { kind: "yes-no", path: "stance.seated" },
	standingFrame: { kind: "yes-no", path: "stance.standingFrame" },
	glasses: { kind: "yes-no", path: "stance.glasses" },
	bridgeLength: length("stance.bridgeLengthMm", BOUNDS.bridgeLengthMm, body),
	gripFromButt: length("stance.gripFromButtMm", BOUNDS.gripFromButtMm, body),
	bridgeToGrip: length("stance.bridgeToGripMm", BOUNDS.bridgeToGripMm, body),
	cueInHand: length("stance.cueInHandMm", BOUNDS.cueInHandMm, body),
	clothHeight: length("stance.clothHeightMm", BOUNDS.clothHeightMm, body),
	game: choice("stance.gameId", CHOICES.game),
	level: choice("level", CHOICES.level),
	budget: choice("budget", CHOICES.budget),
	presentLength: length("presentCue.lengthMm", BOUNDS.cueLengthMm, body),
	presentMass: {
		kind: "mass",
		path: "presentCue.massG",
		bound: BOUNDS.cueMassG,
		bare: mass,
	},
	presentButt: length(
		"presentCue.buttDiameterMm",
		BOUNDS.presentButtDiameterMm,
		fine,
	),
	presentDiameter300: length(
		"presentCue.diameterAt300Mm",
		BOUNDS.presentButtDiameterMm,
		fine,
	),
	presentDiameter700: length(
		"presentCue.diameterAt700Mm",
		BOUNDS.presentShaftDiameterMm,
		fine,
	),
	presentTip: length("presentCue.tipDiameterMm", BOUNDS.tipDiameterMm, fine),
	presentBalance: length(
		"presentCue.balanceFromButtMm",
		BOUNDS.balanceFromButtMm,
		body,
	),
	presentLikes: {
		kind: "choices",
		path: "presentCue.likes",
		options: CHOICES.liked,
	},
	presentDislikes: {
		kind: "choices",
		path: "presentCue.dislikes",
		options: CHOICES.complaint,
	},
	wishLength: length("wishes.lengthMm", BOUNDS.cueLengthMm, body),
	wishMass: {
		kind: "mass",
		path: "wishes.massG",
		bound: BOUNDS.cueMassG,
		bare: mass,
	},
	wishButt: length("wishes.buttDiameterMm", BOUNDS.buttDiameterMm, fine),
	wishTip: length("wishes.tipDiameterMm", BOUNDS.tipDiameterMm, fine),
	wishClosure: choice("wishes.closure", CHOICES.closure),
	wishButtWood: choice("wishes.buttWood", CHOICES.buttWood),
	wishShaftWood: choice("wishes.shaftWood", CHOICES.shaftWood),
	wishSplice: choice("wishes.splice", CHOICES.splice),
	wishLayout: choice("wishes.layout", CHOICES.layout),
	wishTaper: choice("wishes.taperShape", CHOICES.taperShape),
	wishFerrule: choice("wishes.ferruleMetal", CHOICES.ferruleMetal),
	priorityMore: {
		kind: "choices",
		path: "priorities.more",
		options: CHOICES.criterion,
	},
	priorityNone: {
		kind: "choices",
		path: "priorities.none",
		options: CHOICES.criterion,
	},
	wishSteadiness: choice("priorities.doctrine.steadiness", CHOICES.steadiness),
	wishStiffness: choice("priorities.doctrine.stiffness", CHOICES.stiffness),
	wishDeflection: choice("priorities.doctrine.deflection", CHOICES.deflection),
	longestPiece: length(
		"priorities.longestPieceMm",
		BOUNDS.longestPieceMm,
		body,
	),
	maxPrice: {
		kind: "amount",
		path: "priorities.maxPriceMinor",
		bound: BOUNDS.maxPriceMinor,
	},
	notes: { kind: "text" },
	...MEASURE_NOTES,
} as const satisfies Record<string, Field>;

export type FieldName = keyof typeof FIELDS;
export const FIELD_NAMES = Object.keys(FIELDS) as FieldName[];

/** Answers as typed and stored: text, or a list of texts. A missing or empty answer was left out. */
export type Answers = Partial<Record<FieldName, string | readonly string[]>>;
