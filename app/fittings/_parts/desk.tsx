"use client";

import {
	createContext,
	type ReactNode,
	useCallback,
	useContext,
	useDeferredValue,
	useEffect,
	useMemo,
	useState,
} from "react";
import { type Control, useForm, useWatch } from "react-hook-form";
import { useReader } from "@/app/_ui/preferences/reader";
import { type Advice, advise } from "@/lib/advice/advise";
import type { WorkshopOffer } from "@/lib/advice/workshop-offer";
import { type ReadAnswers, readAnswers } from "@/lib/forms/answers";
import type { Answers } from "@/lib/forms/fields";
import { answersFrom, type FormValues, formFrom } from "@/lib/forms/fitting";
import type { TakenWish } from "@/lib/forms/taken-wishes";
import type { Outcome } from "@/lib/numerics/outcome";
import type { Reader } from "@/lib/words/reader";
import { type Conflict, type SaveState, useAutosave } from "./use-autosave";
import { type SearchTools, useSearching } from "./use-search";

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
	readonly reader: Reader;
	/** The form as it reads now; lags typing by a frame on a slow device, never the field itself. */
	readonly read: ReadAnswers;
	readonly advice: Outcome<Advice>;
	readonly flush: () => Promise<number | null>;
}

/** Apart from the desk: it changes as answers travel, when nothing that is worked out from them does. */
interface Keeping {
	readonly saveState: SaveState;
	readonly conflicts: readonly Conflict[];
	readonly draftDamaged: boolean;
}

const DeskContext = createContext<Desk | null>(null);
const KeepingContext = createContext<Keeping | null>(null);
/** Lives as long as the desk, so that a cue found stays found while a question is looked up again. */
const SearchContext = createContext<{
	readonly search: SearchTools;
	readonly want: (isWanted: boolean) => void;
} | null>(null);

export function useDesk(): Desk {
	const desk = useContext(DeskContext);
	if (desk === null) throw new Error("useDesk outside a FittingDesk");
	return desk;
}

/** How far the answers have been kept. */
export function useKeeping(): Keeping {
	const keeping = useContext(KeepingContext);
	if (keeping === null) throw new Error("useKeeping outside a FittingDesk");
	return keeping;
}

/** The search for the answers so far, kept up with them while this part stands. */
export function useSearch(): SearchTools {
	const held = useContext(SearchContext);
	if (held === null) throw new Error("useSearch outside a FittingDesk");
	const { search, want } = held;
	useEffect(() => {
		want(true);
		return () => want(false);
	}, [want]);
	return search;
}

/** Holds one fitting's answers while its steps are walked, keeps them, and computes as they change. */
export function FittingDesk({
	fitting,
	workshop,
	children,
}: {
	fitting: DeskFitting;
	/** Catalogue, densities and prices that the advice is worked out with. */
	workshop: WorkshopOffer;
	children: ReactNode;
}) {
	const reader = useReader();
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
	const read = useMemo(() => {
		const { input, ...rest } = readAnswers(settled, reader.system, takenWishes);
		return { ...rest, input: { ...input, workshop } };
	}, [settled, reader.system, takenWishes, workshop]);
	const advice = useMemo(() => advise(read.input), [read]);
	const [isWanted, want] = useState(false);
	const search = useSearching(read.input, isWanted);
	const searching = useMemo(() => ({ search, want }), [search]);
	const desk = useMemo<Desk>(
		() => ({ fitting, control, answer, reader, read, advice, flush }),
		[fitting, control, answer, reader, read, advice, flush],
	);
	const keeping = useMemo<Keeping>(
		() => ({ saveState, conflicts, draftDamaged }),
		[saveState, conflicts, draftDamaged],
	);
	return (
		<DeskContext.Provider value={desk}>
			<KeepingContext.Provider value={keeping}>
				<SearchContext.Provider value={searching}>
					{children}
				</SearchContext.Provider>
			</KeepingContext.Provider>
		</DeskContext.Provider>
	);
}
