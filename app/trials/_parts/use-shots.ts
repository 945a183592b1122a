"use client";

import { useCallback, useEffect, useMemo, useRef, useState } from "react";
import { newRequestKey } from "@/app/_ui/request-key";
import type { ShotChange, TrialPlan } from "@/lib/forms/trial";
import type { ShotLine, ShotPosition } from "@/lib/trial/shots";
import { keep } from "../actions";
import {
	keepPending,
	type LoggedShot,
	readPending,
	withChanges,
} from "./pending";

export type KeepState = "saved" | "saving" | "on-device" | "unkept";

/** After a failure it is tried again this often. */
const RETRY_MS = 5000;

/**
 * The shots of one trial: shown at once, kept on the device until the server has them, each sent
 * under its own key, so that a double tap, a reload or a lost answer adds nothing.
 */
export function useShots({
	trialId,
	plan,
	server,
}: {
	trialId: string;
	plan: TrialPlan;
	/** What the page was rendered with. */
	server: readonly LoggedShot[];
}): {
	shots: readonly LoggedShot[];
	state: KeepState;
	/** Shots of this device that the server did not take. */
	refusedCount: number;
	hasEnded: boolean;
	isDamaged: boolean;
	log: (isPotted: boolean) => void;
	note: (notes: { line?: ShotLine; position?: ShotPosition }) => void;
	takeBack: () => void;
	/** True once every change is on the server. */
	flush: () => Promise<boolean>;
} {
	const [acknowledged, setAcknowledged] = useState(server);
	const [pending, setPending] = useState<readonly ShotChange[]>([]);
	const [state, setState] = useState<KeepState>("saved");
	const [refusedCount, setRefusedCount] = useState(0);
	const [hasEnded, setEnded] = useState(false);
	const [isDamaged, setDamaged] = useState(false);
	const latest = useRef<{
		acknowledged: readonly LoggedShot[];
		pending: readonly ShotChange[];
	}>({ acknowledged: server, pending: [] });
	const sending = useRef<Promise<boolean> | null>(null);

	const put = useCallback(
		(next: Partial<typeof latest.current>) => {
			latest.current = { ...latest.current, ...next };
			setAcknowledged(latest.current.acknowledged);
			setPending(latest.current.pending);
			if (!keepPending(trialId, latest.current.pending)) setState("unkept");
		},
		[trialId],
	);

	const sendOnce = useCallback(async (): Promise<void> => {
		const sent = latest.current.pending;
		setState("saving");
		const kept = await keep({ trialId, changes: [...sent] });
		const refused = new Set(kept.refused);
		put({
			acknowledged: kept.shots,
			pending: latest.current.pending
				.slice(sent.length)
				.filter(({ requestKey }) => !refused.has(requestKey)),
		});
		if (refused.size > 0) setRefusedCount((count) => count + refused.size);
		if (kept.hasEnded) setEnded(true);
	}, [trialId, put]);

	const flush = useCallback((): Promise<boolean> => {
		sending.current ??= (async () => {
			try {
				while (latest.current.pending.length > 0) await sendOnce();
				setState("saved");
				return true;
			} catch {
				// The device still has them; the state line says so and it is tried again.
				setState((now) => (now === "unkept" ? now : "on-device"));
				return false;
			} finally {
				sending.current = null;
			}
		})();
		return sending.current;
	}, [sendOnce]);

	/** Takes in what other devices logged; what is pending here is sent by `flush`, which brings the same. */
	const refresh = useCallback(async () => {
		if (latest.current.pending.length > 0) return void flush();
		try {
			const kept = await keep({ trialId, changes: [] });
			if (latest.current.pending.length > 0) return;
			put({ acknowledged: kept.shots });
			if (kept.hasEnded) setEnded(true);
		} catch {
			setState("on-device");
		}
	}, [trialId, put, flush]);

	// Once, on opening: what this device had not sent yet, then what the server has by now.
	useEffect(() => {
		const kept = readPending(trialId);
		if (kept === "damaged") {
			setDamaged(true);
			keepPending(trialId, []);
		} else if (kept.length > 0) put({ pending: kept });
		void refresh();
		const onVisible = () => {
			if (document.visibilityState === "visible") void refresh();
		};
		document.addEventListener("visibilitychange", onVisible);
		return () => document.removeEventListener("visibilitychange", onVisible);
	}, [trialId, put, refresh]);

	useEffect(() => {
		if (state !== "on-device" && state !== "unkept") return;
		const timer = setInterval(() => void flush(), RETRY_MS);
		const online = () => void flush();
		window.addEventListener("online", online);
		return () => {
			clearInterval(timer);
			window.removeEventListener("online", online);
		};
	}, [state, flush]);

	const change = useCallback(
		(next: ShotChange) => {
			put({ pending: [...latest.current.pending, next] });
			void flush();
		},
		[put, flush],
	);
	const current = useCallback(
		() =>
			withChanges(latest.current.acknowledged, latest.current.pending, plan),
		[plan],
	);

	return {
		shots: useMemo(
			() => withChanges(acknowledged, pending, plan),
			[acknowledged, pending, plan],
		),
		state,
		refusedCount,
		hasEnded,
		isDamaged,
		log: useCallback(
			(isPotted) =>
				change({
					kind: "put",
					requestKey: newRequestKey(),
					shotNumber: current().length,
					isPotted,
				}),
			[change, current],
		),
		note: useCallback(
			(notes) => {
				const last = current().at(-1);
				if (last === undefined) return;
				const { letter: _, ...shot } = last;
				change({ kind: "put", ...shot, ...notes });
			},
			[change, current],
		),
		takeBack: useCallback(() => {
			const last = current().at(-1);
			if (last !== undefined)
				change({ kind: "take-back", requestKey: last.requestKey });
		}, [change, current]),
		flush,
	};
}
