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
import type { FittingKeeper, KeeperView } from "@/app/_device/keeper";
import type { KeptFitting } from "@/app/_device/records";
import { useFormKept, useKeeper } from "@/app/_device/use-keeper";
import { useEarlyInput } from "@/app/_ui/fields/use-early-input";
import { useReader } from "@/app/_ui/preferences/reader";
import { type Advice, advise } from "@/lib/advice/advise";
import type { WorkshopOffer } from "@/lib/advice/workshop-offer";
import { type ReadAnswers, readAnswers } from "@/lib/forms/answers";
import type { Answers, FieldName } from "@/lib/forms/fields";
import { answersFrom, type FormValues, formFrom } from "@/lib/forms/fitting";
import type { Outcome } from "@/lib/numerics/outcome";
import type { Reader } from "@/lib/words/reader";
import { type SearchTools, useSearching } from "./use-search";

export interface DeskFitting {
	readonly id: string;
	/** Null until the server has given one. */
	readonly number: number | null;
	readonly playerName: string;
	readonly isDemo: boolean;
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
	readonly keeper: FittingKeeper;
}

const DeskContext = createContext<Desk | null>(null);
/** Apart from the desk: it changes as answers travel, when nothing that is worked out from them does. */
const KeepingContext = createContext<KeeperView | null>(null);
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
export function useKeeping(): KeeperView {
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
	fitting: initial,
	workshop,
	children,
}: {
	/** As the page or the device has it to begin with. */
	fitting: KeptFitting;
	/** Catalogue, densities and prices that the advice is worked out with. */
	workshop: WorkshopOffer;
	children: ReactNode;
}) {
	const reader = useReader();
	const { keeper, view } = useKeeper(initial);
	const { control, setValue } = useForm<FormValues>({
		defaultValues: formFrom(initial.answers),
	});
	const values = useWatch({ control });
	const answers = useMemo(() => answersFrom(values as FormValues), [values]);
	const put = useCallback(
		(field: FieldName, answer: Answers[FieldName]) =>
			setValue(field, formFrom({ [field]: answer })[field] as never),
		[setValue],
	);
	useEarlyInput();
	useFormKept({ keeper, view, answers, put });
	const takenWishes = useSame(view.fitting.takenWishes);
	const offer = useSame(workshop);
	const answer = useCallback(
		(name: keyof FormValues, value: string | string[]) =>
			setValue(name, value as never),
		[setValue],
	);
	const settled = useSame(useDeferredValue(answers));
	const read = useMemo(() => {
		const { input, ...rest } = readAnswers(settled, reader.system, takenWishes);
		return { ...rest, input: { ...input, workshop: offer } };
	}, [settled, reader.system, takenWishes, offer]);
	const advice = useMemo(() => advise(read.input), [read]);
	const [isWanted, want] = useState(false);
	const search = useSearching(read.input, isWanted);
	const searching = useMemo(() => ({ search, want }), [search]);
	const { id, number, player, isDemo, specNumber } = view.fitting;
	const fitting = useMemo<DeskFitting>(
		() => ({ id, number, playerName: player.name, isDemo, specNumber }),
		[id, number, player.name, isDemo, specNumber],
	);
	const desk = useMemo<Desk>(
		() => ({ fitting, control, answer, reader, read, advice, keeper }),
		[fitting, control, answer, reader, read, advice, keeper],
	);
	return (
		<DeskContext.Provider value={desk}>
			<KeepingContext.Provider value={view}>
				<SearchContext.Provider value={searching}>
					{children}
				</SearchContext.Provider>
			</KeepingContext.Provider>
		</DeskContext.Provider>
	);
}

/**
 * The value before while the new one says the same: what was worked out for it still holds, and is not
 * worked out again because answers were sent or fetched.
 */
function useSame<T>(value: T): T {
	const [kept, keep] = useState(value);
	if (kept === value) return kept;
	if (JSON.stringify(kept) === JSON.stringify(value)) return kept;
	keep(value);
	return value;
}
