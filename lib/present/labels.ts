import type { CriterionId } from "@/lib/advice/criteria";
import type { Basis, Sureness } from "@/lib/advice/figure";
import type {
	Budget,
	ClosureWish,
	Complaint,
	Level,
	LikedPart,
} from "@/lib/advice/input";
import type { LayoutId, SpliceId, TaperShapeId } from "@/lib/cue/design";
import { type FieldName, noteOn } from "@/lib/forms/fields";
import { CHOICES, type MeasureName } from "@/lib/forms/fitting-input";
import { METALS, type MetalId } from "@/lib/reference/metals";
import { GAMES, type GameId } from "@/lib/reference/rules";
import { WOODS, type WoodId } from "@/lib/reference/woods";

/** Plain names of what a person chooses or reads. */

export const MEASURE_LABELS: Readonly<Record<MeasureName, string>> = {
	stature: "Height",
	armSpan: "Arm span",
	handLength: "Hand length",
	shoulderToElbow: "Shoulder to elbow",
	elbowToGrip: "Elbow to middle of the fist",
	shoulderBreadth: "Shoulder breadth, bone to bone",
	gripReadings: "Grip circle",
	bridgeLength: "Bridge length",
	gripFromButt: "Grip hand to butt end",
	bridgeToGrip: "Bridge hand to grip hand",
	cueInHand: "Length of the cue in hand",
};

const MEASURE_NOTE_LABELS = Object.fromEntries(
	CHOICES.measure.map((measure) => [
		noteOn(measure),
		`Note on: ${MEASURE_LABELS[measure]}`,
	]),
) as Record<`${MeasureName}Note`, string>;

export const FIELD_LABELS: Readonly<Record<FieldName, string>> = {
	...MEASURE_LABELS,
	...MEASURE_NOTE_LABELS,
	measuredAlone: "Measuring alone",
	notMeasured: "Could not be measured",
	birthDate: "Date of birth",
	standingFrame: "Plays in a standing frame",
	glasses: "Plays in glasses",
	clothHeight: "Cloth above the floor",
	age: "Age",
	sex: "Body tables to use",
	hand: "Playing hand",
	stance: "Feet and shoulders",
	posture: "Height over the cue",
	bridgeArm: "Bridge arm",
	seated: "Plays seated",
	game: "Game",
	level: "Playing level",
	budget: "Budget",
	presentLength: "Length of the present cue",
	presentMass: "Weight of the present cue",
	presentButt: "Butt diameter of the present cue",
	presentDiameter300: "Diameter 30 cm (11¾ in) from its butt end",
	presentDiameter700: "Diameter 70 cm (27½ in) from its butt end",
	presentTip: "Tip of the present cue",
	presentBalance: "Balance point of the present cue, from the butt end",
	presentLikes: "What is right about it",
	presentDislikes: "What is wrong with it",
	wishLength: "Wanted length",
	wishMass: "Wanted weight",
	wishButt: "Wanted butt diameter",
	wishTip: "Wanted tip",
	wishClosure: "How thumb and finger should close",
	wishButtWood: "Butt wood",
	wishShaftWood: "Shaft wood",
	wishSplice: "Splice",
	wishLayout: "Pieces",
	wishTaper: "Taper",
	wishFerrule: "Ferrule",
	priorityMore: "What counts more",
	priorityNone: "What does not count",
	wishSteadiness: "How the cue should swing",
	wishStiffness: "How stiff it should be",
	wishDeflection: "Cue-ball deflection",
	longestPiece: "Longest piece the case takes",
	maxPrice: "Price, at most",
	notes: "Notes",
};

export const SEX_LABELS = { female: "Women’s", male: "Men’s" } as const;
export const HAND_LABELS = { right: "Right", left: "Left" } as const;
export const STANCE_LABELS = {
	"side-on": "Side-on",
	square: "Square",
} as const;
export const POSTURE_LABELS = {
	low: "Chin on the cue",
	upright: "More upright",
} as const;
export const BRIDGE_ARM_LABELS = {
	straight: "Straight",
	bent: "Bent",
} as const;
export const YES_NO_LABELS = { yes: "Yes", no: "No" } as const;

export const LEVEL_LABELS: Readonly<Record<Level, string>> = {
	new: "New to the game",
	club: "Club player",
	county: "County and above",
};

export const BUDGET_LABELS: Readonly<Record<Budget, string>> = {
	low: "Keep it low",
	middle: "Middle",
	open: "Open",
};

export const LIKED_LABELS: Readonly<Record<LikedPart, string>> = {
	length: "Length",
	weight: "Weight",
	butt: "Butt thickness",
	tip: "Tip",
	balance: "Balance",
};

export const COMPLAINT_LABELS: Readonly<Record<Complaint, string>> = {
	"too-long": "Too long",
	"too-short": "Too short",
	"too-heavy": "Too heavy",
	"too-light": "Too light",
	"too-thick": "Butt too thick",
	"too-slim": "Butt too slim",
	"tip-too-big": "Tip too big",
	"tip-too-small": "Tip too small",
	"front-heavy": "Heavy at the front",
	"butt-heavy": "Heavy at the back",
};

export const CLOSURE_LABELS: Readonly<Record<ClosureWish, string>> = {
	"small-gap": "A small gap",
	touching: "Just touching",
	"small-overlap": "A small overlap",
};

export const SPLICE_LABELS: Readonly<Record<SpliceId, string>> = {
	plain: "Plain butt, no splice",
	"hand-four-point": "Hand-spliced, four rounded points",
	"machine-four-point": "Machine-spliced, four sharp points",
};

export const LAYOUT_LABELS: Readonly<Record<LayoutId, string>> = {
	"one-piece": "One piece",
	"three-quarter": "Three-quarter joint",
	centre: "Centre joint",
};

export const TAPER_LABELS: Readonly<Record<TaperShapeId, string>> = {
	straight: "Straight",
	even: "Even",
	"slim-forward": "Slim in front",
	"full-forward": "Full in front",
};

export const BASIS_LABELS: Readonly<Record<Basis, string>> = {
	wish: "Your wish",
	measured: "Measured here",
	published: "Published figures",
	derived: "Computed from published figures",
	"common-practice": "Common practice, no published source",
	assumed: "This project’s judgement",
};

export const SURENESS_LABELS: Readonly<Record<Sureness, string>> = {
	chosen: "As you chose",
	firm: "Firm",
	fair: "Fair",
	rough: "Rough",
};

export const gameName = (id: GameId): string => GAMES[id].name;
export const woodName = (id: WoodId): string => WOODS[id].name;
export const metalName = (id: MetalId): string => METALS[id].name;

export const CRITERION_LABELS: Readonly<Record<CriterionId, string>> = {
	closure: "Grip closure",
	reach: "Reach and length",
	weight: "Weight",
	steadiness: "Steadiness in the hand",
	balance: "Balance",
	deflection: "Cue-ball deflection",
	forgiveness: "Forgiveness of the tip",
	tip: "Tip size",
	stiffness: "Stiffness",
	build: "Little added metal",
	price: "Price",
	finish: "Woods and hand work",
	carrying: "Short to carry",
};

export const STEADINESS_LABELS = {
	"as-now": "As now",
	steadier: "Steadier",
	livelier: "Livelier",
	"no-matter": "No matter",
} as const;
export const STIFFNESS_LABELS = {
	"as-now": "As now",
	stiffer: "Stiffer",
	softer: "Softer",
	"no-matter": "No matter",
} as const;
export const DEFLECTION_LABELS = {
	low: "The less the better",
	"no-matter": "No matter",
} as const;

/** The label of a stored choice, for the fields that have fixed options. */
export function choiceLabel(field: FieldName, option: string): string {
	const tables: Partial<Record<FieldName, Readonly<Record<string, string>>>> = {
		sex: SEX_LABELS,
		hand: HAND_LABELS,
		stance: STANCE_LABELS,
		posture: POSTURE_LABELS,
		bridgeArm: BRIDGE_ARM_LABELS,
		seated: YES_NO_LABELS,
		standingFrame: YES_NO_LABELS,
		glasses: YES_NO_LABELS,
		measuredAlone: YES_NO_LABELS,
		notMeasured: MEASURE_LABELS,
		level: LEVEL_LABELS,
		budget: BUDGET_LABELS,
		presentLikes: LIKED_LABELS,
		presentDislikes: COMPLAINT_LABELS,
		wishClosure: CLOSURE_LABELS,
		wishSplice: SPLICE_LABELS,
		wishLayout: LAYOUT_LABELS,
		wishTaper: TAPER_LABELS,
		priorityMore: CRITERION_LABELS,
		priorityNone: CRITERION_LABELS,
		wishSteadiness: STEADINESS_LABELS,
		wishStiffness: STIFFNESS_LABELS,
		wishDeflection: DEFLECTION_LABELS,
	};
	if (field === "game") return gameName(option as GameId);
	if (field === "wishButtWood" || field === "wishShaftWood")
		return woodName(option as WoodId);
	if (field === "wishFerrule") return metalName(option as MetalId);
	return tables[field]?.[option] ?? option;
}
