"use client";

import { createContext, type ReactNode, useContext } from "react";
import { useWatch } from "react-hook-form";
import { sameAnswer } from "@/lib/forms/answer-changes";
import type { Answers, FieldName } from "@/lib/forms/fields";
import { answersFrom, type FormValues } from "@/lib/forms/fitting";
import { formatDay } from "@/lib/present/dates";
import { useDesk } from "./desk";

/** The earlier fitting whose answers a refit began with. */
interface OldAnswers {
	readonly number: number;
	/** ISO date. */
	readonly day: string;
	readonly answers: Answers;
}

const OldAnswersContext = createContext<OldAnswers | null>(null);

export function OldAnswersProvider({
	old,
	children,
}: {
	/** Null for a fitting that began empty. */
	old: OldAnswers | null;
	children: ReactNode;
}) {
	return (
		<OldAnswersContext.Provider value={old}>
			{children}
		</OldAnswersContext.Provider>
	);
}

/** Says that an answer is still the earlier fitting's; null once it reads otherwise or is empty. */
export function useOldAnswer(name: FieldName): string | null {
	const old = useContext(OldAnswersContext);
	const { control, reader } = useDesk();
	const value = useWatch({ control, name: name as keyof FormValues });
	const before = old?.answers[name];
	const now = answersFrom({ [name]: value } as Partial<FormValues>)[name];
	if (old === null || before === undefined || now === undefined) return null;
	return sameAnswer(before, now)
		? reader.say("timeline.oldAnswer", {
				number: String(old.number),
				date: formatDay(old.day, reader),
			})
		: null;
}
