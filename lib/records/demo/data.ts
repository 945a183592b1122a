import "server-only";

/** Kinds of invented rows, as a confirmation counts them. */
export const DEMO_KINDS = [
	"players",
	"fittings",
	"specs",
	"trials",
	"notes",
	"playerCues",
	"rackCues",
	"onlineCues",
	"jobs",
	"evidence",
	"settings",
] as const;

export type DemoKind = (typeof DEMO_KINDS)[number];

/** An invented row that stays because something real hangs on it. */
export interface KeptDemo {
	readonly kind: "players" | "fittings" | "trials" | "onlineCues" | "jobs";
	/** Name of the player, or number of the rest. */
	readonly name: string;
	/** What hangs on it. */
	readonly because: "fitting" | "trial" | "cue" | "note" | "job" | "evidence";
}

/** What removing the invented demo data takes away, and what it leaves. */
export interface DemoInventory {
	readonly counts: Readonly<Record<DemoKind, number>>;
	/** Names of the players that go. */
	readonly players: readonly string[];
	readonly kept: readonly KeptDemo[];
}

/** Ids of everything that goes. */
export interface DemoPlan {
	readonly inventory: DemoInventory;
	readonly ids: Readonly<Record<DemoKind, readonly string[]>>;
}

/** The applied request that says so: the invented data does not come back at the next start. */
export const DEMO_REMOVED_KEY = "demo-data-removed";
