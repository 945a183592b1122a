"use client";

import {
	createContext,
	type ReactNode,
	useCallback,
	useContext,
	useDeferredValue,
	useMemo,
} from "react";
import { type Control, useForm, useWatch } from "react-hook-form";
import { useUnits } from "@/app/_ui/preferences/units";
import { type Advice, advise } from "@/lib/advice/advise";
import { type ReadAnswers, readAnswers } from "@/lib/forms/answers";
import type { Answers } from "@/lib/forms/fields";
import { answersFrom, type FormValues, formFrom } from "@/lib/forms/fitting";
import type { TakenWish } from "@/lib/forms/taken-wishes";
import type { Outcome } from "@/lib/numerics/outcome";
import type { UnitSystem } from "@/lib/units/quantity";
import { type Conflict, type SaveState, useAutosave } from "./use-autosave";

export interface DeskFitting {
	readonly id: string;
	readonly number: number;
	readonly playerName: string;
	readonly isDemo: boolean;
	readonly answers: Answers;
	readonly revision: number;
	readonly takenWishes: readonly TakenWish[];
	/** Number of the spec saved from this fitting, null before the first. */
	readonly specNumber: number | null;
}

interface Desk {
	readonly fitting: DeskFitting;
	readonly control: Control<FormValues>;
	readonly answer: (name: keyof FormValues, value: string | string[]) => void;
	readonly system: UnitSystem;
	/** The form as it reads now; lags typing by a frame on a slow device, never the field itself. */
	readonly read: ReadAnswers;
	readonly advice: Outcome<Advice>;
	readonly saveState: SaveState;
	readonly conflicts: readonly Conflict[];
	readonly draftDamaged: boolean;
	readonly flush: () => Promise<number | null>;
}

const DeskContext = createContext<Desk | null>(null);

export function useDesk(): Desk {
	const desk = useContext(DeskContext);
	if (desk === null) throw new Error("useDesk outside a FittingDesk");
	return desk;
}

/** Holds one fitting's answers while its steps are walked, keeps them, and computes as they change. */
export function FittingDesk({
	fitting,
	children,
}: {
	fitting: DeskFitting;
	children: ReactNode;
}) {
	const system = useUnits();
	const { control, reset, setValue } = useForm<FormValues>({
		defaultValues: formFrom(fitting.answers),
	});
	const values = useWatch({ control });
	const answers = useMemo(() => answersFrom(values as FormValues), [values]);
	const put = useCallback((next: Answers) => reset(formFrom(next)), [reset]);
	const {
		state: saveState,
		conflicts,
		draftDamaged,
		takenWishes,
		flush,
	} = useAutosave({
		fittingId: fitting.id,
		fittingNumber: fitting.number,
		answers,
		server: fitting,
		put,
	});
	const answer = useCallback(
		(name: keyof FormValues, value: string | string[]) =>
			setValue(name, value as never),
		[setValue],
	);
	const settled = useDeferredValue(answers);
	const read = useMemo(
		() => readAnswers(settled, system, takenWishes),
		[settled, system, takenWishes],
	);
	const advice = useMemo(() => advise(read.input), [read]);
	const desk = useMemo<Desk>(
		() => ({
			fitting,
			control,
			answer,
			system,
			read,
			advice,
			saveState,
			conflicts,
			draftDamaged,
			flush,
		}),
		[
			fitting,
			control,
			answer,
			system,
			read,
			advice,
			saveState,
			conflicts,
			draftDamaged,
			flush,
		],
	);
	return <DeskContext.Provider value={desk}>{children}</DeskContext.Provider>;
}
