import { expect, test } from "vitest";
import {
	type DiaryEntry,
	remeasureView,
	timelineRow,
} from "@/lib/present/timeline-view";
import { METRIC, reading, TRADE } from "../support/readers";

const GERMAN = reading("metric", "de");
const placed = { id: "a", at: "2026-05-03T10:00:00.000Z", isDemo: false };
const cue: DiaryEntry = {
	...placed,
	kind: "cue",
	name: "Ash one",
	lengthMm: 1460,
	massG: 510,
	jobNumber: 4,
	asideAt: new Date("2026-06-01T00:00:00Z"),
};

test("a cue tells its figures in the reader's units and language", () => {
	expect(timelineRow(cue, METRIC)).toMatchObject({
		day: "3 May 2026",
		kindName: "Cue",
		href: null,
	});
	expect(timelineRow(cue, METRIC).details.join(" ")).toMatch(
		/1460.mm long weighs 510.g built as job 4 put aside on 1 June 2026/,
	);
	expect(timelineRow(cue, TRADE).details[0]).toMatch(/57.½.in|57½/);
	expect(timelineRow(cue, GERMAN).day).toBe("3. Mai 2026");
	expect(timelineRow(cue, GERMAN).details.join(" ")).toMatch(/1460.mm lang/);
});

test("what has a page leads to it", () => {
	const hrefs = (
		[
			{ kind: "fitting", number: 7, hasSpec: false, basedOnNumber: 3 },
			{ kind: "fitting", number: 7, hasSpec: true, basedOnNumber: null },
			{ kind: "spec", number: 2, revision: 5, reason: "", fittingNumber: 7 },
			{ kind: "job", number: 9, state: "on-the-bench" },
			{ kind: "trial", number: 4, hasEnded: true },
			{ kind: "note", text: "Plays on two tables" },
		] as const
	).map((entry) => timelineRow({ ...placed, ...entry }, METRIC).href);
	expect(hrefs).toEqual([
		"/fittings/7/player",
		"/fittings/7/recommendation",
		"/specs/2/5",
		"/workshop/9",
		"/trials/4",
		null,
	]);
});

test("a fitting has its summary beside it, and nothing else has", () => {
	const also = (entry: DiaryEntry) => timelineRow(entry, GERMAN).also;
	expect(
		also({
			...placed,
			kind: "fitting",
			number: 7,
			hasSpec: false,
			basedOnNumber: null,
		}),
	).toEqual({
		href: "/fittings/7/summary",
		text: "Zusammenfassung für den Spieler",
	});
	expect(also(cue)).toBeNull();
});

test("an overdue day is said to be overdue, in both languages", () => {
	const due = { on: "2026-05-03", by: "growth", isOverdue: true } as const;
	expect(remeasureView(due, METRIC)).toEqual({
		text: "Overdue since 3 May 2026.",
		because: "By the growth tables, from the age at the last fitting.",
		isOverdue: true,
	});
	expect(remeasureView(due, GERMAN).text).toBe("Überfällig seit 3. Mai 2026.");
	expect(remeasureView(null, METRIC)).toEqual({
		text: "No day is due.",
		because: null,
		isOverdue: false,
	});
});
