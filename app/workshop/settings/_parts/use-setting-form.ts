"use client";

import { useRouter } from "next/navigation";
import { useEffect, useRef, useState, useTransition } from "react";
import {
	type DefaultValues,
	type FieldErrors,
	type FieldValues,
	type Resolver,
	set,
	type UseFormReturn,
	useForm,
} from "react-hook-form";
import { useReader } from "@/app/_ui/preferences/reader";
import { newRequestKey } from "@/app/_ui/request-key";
import { useWho } from "@/app/workshop/_parts/use-who";
import type { FormProblem, FormRead } from "@/lib/forms/settings/form";
import { settingProblemText } from "@/lib/present/setting-refusal-words";
import type { UnitSystem } from "@/lib/units/quantity";
import type { SettingContents, SettingKind } from "@/lib/workshop/settings";
import { save } from "../actions";

/** How saving stands. */
export type Saving =
	| { readonly status: "none" }
	| { readonly status: "wrong"; readonly messages: readonly string[] }
	| { readonly status: "refused"; readonly messages: readonly string[] }
	| { readonly status: "conflict"; readonly version: number }
	| { readonly status: "no-answer" }
	| {
			readonly status: "saved";
			readonly version: number;
			readonly validFrom: string;
	  };

export interface SettingSave {
	readonly state: Saving;
	readonly isBusy: boolean;
	readonly validFrom: string;
	readonly putValidFrom: (isoDate: string) => void;
	readonly note: string;
	readonly putNote: (text: string) => void;
	readonly by: string;
	readonly putBy: (text: string) => void;
	/** Null until asked for and missing. */
	readonly isByMissing: boolean;
	readonly submit: () => void;
	/** Saves what was typed after the version somebody else saved meanwhile. */
	readonly saveOver: (version: number) => void;
}

/** What a form of a setting is made of. */
export interface SettingFormOf<
	K extends SettingKind,
	Form extends FieldValues,
> {
	readonly kind: K;
	readonly initial: Form;
	/** Newest version when the form began; 0 where there is none. */
	readonly newest: number;
	readonly today: string;
	readonly read: (form: Form, system: UnitSystem) => FormRead<K>;
	/** The field of a path as it is named on the page. */
	readonly labelOf: (path: string, form: Form) => string;
}

/**
 * Holds a setting as typed, reads it when it is to be saved, and saves it as the next version. Whatever
 * goes wrong, what was typed stays.
 */
export function useSettingForm<
	K extends SettingKind,
	Form extends FieldValues,
>({
	kind,
	initial,
	newest,
	today,
	read,
	labelOf,
}: SettingFormOf<K, Form>): {
	form: UseFormReturn<Form, unknown, SettingContents[K] & FieldValues>;
	saving: SettingSave;
} {
	type Content = SettingContents[K] & FieldValues;
	const reader = useReader();
	const router = useRouter();
	const problems = useRef<readonly FormProblem[]>([]);
	const editedFrom = useRef(newest);
	const requestKey = useRef<string | null>(null);
	const [state, setState] = useState<Saving>({ status: "none" });
	const [validFrom, setValidFrom] = useState(today);
	const [note, setNote] = useState("");
	const [by, putBy] = useWho();
	const [isByAsked, setByAsked] = useState(false);
	const [isBusy, startTransition] = useTransition();

	const resolver: Resolver<Form, unknown, Content> = (values) => {
		const got = read(values, reader.system);
		problems.current = got.ok ? [] : got.problems;
		if (got.ok) return { values: got.content as Content, errors: {} };
		const errors: FieldValues = {};
		for (const { path, refusal } of got.problems)
			set(errors, path, {
				type: refusal.code,
				message: settingProblemText(refusal, reader),
			});
		return { values: {}, errors: errors as FieldErrors<Form> };
	};
	const form = useForm<Form, unknown, Content>({
		defaultValues: initial as DefaultValues<Form>,
		resolver,
	});
	const { isDirty } = form.formState;

	useEffect(() => {
		if (!isDirty) return;
		const warn = (event: BeforeUnloadEvent) => event.preventDefault();
		addEventListener("beforeunload", warn);
		return () => removeEventListener("beforeunload", warn);
	}, [isDirty]);

	useEffect(() => {
		const subscription = form.watch(() => {
			requestKey.current = null;
			setState((now) => (now.status === "saved" ? { status: "none" } : now));
		});
		return () => subscription.unsubscribe();
	}, [form]);

	const send = (content: Content) => {
		requestKey.current ??= newRequestKey();
		const request = {
			kind,
			content,
			editedFrom: editedFrom.current,
			validFrom,
			note,
			by,
			requestKey: requestKey.current,
		};
		startTransition(async () => {
			try {
				const saved = await save<K>(request);
				if (saved.ok) {
					editedFrom.current = saved.version;
					form.reset(form.getValues());
					requestKey.current = null;
					setNote("");
					setState({ status: "saved", version: saved.version, validFrom });
					router.refresh();
				} else if ("conflict" in saved) {
					requestKey.current = null;
					setState({ status: "conflict", version: saved.conflict });
				} else {
					requestKey.current = null;
					setState({
						status: "refused",
						messages: saved.refusals.map((refusal) =>
							settingProblemText(refusal, reader),
						),
					});
				}
			} catch {
				setState({ status: "no-answer" });
			}
		});
	};
	const submit = () => {
		setByAsked(true);
		void form.handleSubmit(
			(content) => {
				if (by.trim() === "") {
					setState({ status: "none" });
					focusOn(["by"]);
				} else send(content);
			},
			() => {
				const values = form.getValues();
				setState({
					status: "wrong",
					messages: problems.current.map(({ path, refusal }) =>
						reader.say("settingRefusal.field", {
							field: labelOf(path, values),
							problem: settingProblemText(refusal, reader),
						}),
					),
				});
				focusOn(problems.current.map(({ path }) => path));
			},
		)();
	};
	const typing =
		<T>(put: (value: T) => void) =>
		(value: T) => {
			requestKey.current = null;
			put(value);
		};
	return {
		form,
		saving: {
			state,
			isBusy,
			validFrom,
			putValidFrom: typing(setValidFrom),
			note,
			putNote: typing(setNote),
			by,
			putBy: typing(putBy),
			isByMissing: isByAsked && by.trim() === "",
			submit,
			saveOver: (version) => {
				editedFrom.current = version;
				submit();
			},
		},
	};
}

/** The first of some fields that has a control of its name. */
function focusOn(names: readonly string[]): void {
	for (const name of names) {
		const [control] = document.getElementsByName(name);
		if (control === undefined) continue;
		control.focus();
		return;
	}
}
