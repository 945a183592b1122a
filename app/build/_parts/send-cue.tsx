"use client";

import { useRouter } from "next/navigation";
import { useEffect, useRef, useState } from "react";
import { Button } from "@/app/_ui/button";
import { ChoiceField } from "@/app/_ui/fields/choice-field";
import { TextField } from "@/app/_ui/fields/text-field";
import { Notice } from "@/app/_ui/notice";
import { newRequestKey } from "@/app/_ui/request-key";
import type { WorkDone } from "@/lib/access/work";
import { settledOnline } from "@/lib/forms/online-cue";
import { formatMass } from "@/lib/present/figures";
import { formatAmountBand } from "@/lib/present/money";
import { type SendResult, sendCue } from "../actions";
import styles from "./build.module.css";
import { useBuilding } from "./building";
import { type Contact, contactProblems, EMPTY_CONTACT } from "./contact";
import { forgetContact, keepContact, readContact } from "./contact-store";
import { heldText } from "./held-text";
import { handIn, type useWork } from "./use-work";

type Failure = Exclude<SendResult, { ok: true }> | "no-answer";

/** Asks the workshop for the cue: who asks, what is kept, and the one button. */
export function SendCue({ work }: { work: ReturnType<typeof useWork> }) {
	const { reader, money, answers, kept, assessed, problems, setKept, offer } =
		useBuilding();
	const { say } = reader;
	const router = useRouter();
	const [contact, setContact] = useState<Contact>(EMPTY_CONTACT);
	const [isAsked, setAsked] = useState(false);
	const [isSending, setSending] = useState(false);
	const [failure, setFailure] = useState<Failure | null>(null);
	const requestKey = useRef<string | null>(null);
	const failed = useRef<HTMLDivElement>(null);
	const { cue, isCurrent } = assessed;
	const wrong = contactProblems(contact);
	const isFitting =
		problems.length === 0 &&
		cue.findings.every(({ kind }) => kind !== "refused") &&
		cue.massG !== null &&
		cue.price !== null;

	useEffect(() => {
		const before = readContact();
		if (before !== null) setContact(before);
	}, []);
	const put = (change: Partial<Contact>) => {
		work.begin();
		const next = { ...contact, ...change };
		setContact(next);
		keepContact(next);
	};

	const send = async (): Promise<void> => {
		setAsked(true);
		if (Object.keys(wrong).length > 0) {
			const [first] = Object.keys(wrong);
			document.getElementsByName(`contact-${first}`)[0]?.focus();
			return;
		}
		if (!isFitting || cue.massG === null || cue.price === null) return;
		setSending(true);
		setFailure(null);
		const sent = settledOnline(answers, reader.system);
		// The same key until the server has confirmed: pressed again it is the same job.
		requestKey.current ??= newRequestKey();
		try {
			const key = requestKey.current;
			const result = await handIn<SendResult>({
				take: work.take,
				hand: (done) => hand(sent, key, done),
				onWait: (held) => setFailure({ ok: false, held }),
			});
			if (result.ok) {
				requestKey.current = null;
				forgetContact();
				setKept({ ...result.kept, answers: sent });
				router.push(`/build/${result.kept.token}/sent`);
				return;
			}
			setFailure(result);
			if ("code" in result && result.code === "changed") router.refresh();
		} catch {
			setFailure("no-answer");
		}
		setSending(false);
		requestAnimationFrame(() => failed.current?.focus());
	};
	const hand = async (
		sent: ReturnType<typeof settledOnline>,
		key: string,
		done: WorkDone,
	): Promise<SendResult> =>
		sendCue({
			requestKey: key,
			cueId: kept?.id ?? null,
			answers: sent,
			work: done,
			name: contact.name,
			contact: contact.contact,
			message: contact.message,
			isMinor: contact.age === "minor",
			isConsented: true,
			website: contact.website,
			seen: {
				massG: cue.massG?.value ?? Number.NaN,
				totalMinor: cue.price?.totalMinor ?? Number.NaN,
			},
		});

	const isMinor = contact.age === "minor";
	const error = (field: keyof Contact): string | null => {
		const problem = isAsked ? wrong[field] : undefined;
		if (problem === undefined) return null;
		return problem === "contactShape"
			? say("online.send.contactShape", { text: contact.contact })
			: problem === "tooLong"
				? say("online.send.tooLong", {
						count: String(contact[field]).length,
						most: 1500,
					})
				: say(`online.send.${problem}`);
	};
	return (
		<form
			className={styles.group}
			noValidate
			onSubmit={(event) => {
				event.preventDefault();
				if (!isSending && isCurrent) void send();
			}}
		>
			{!isFitting && (
				<Notice kind="caution">
					<p>{say("online.send.fitsFirst")}</p>
				</Notice>
			)}
			<ChoiceField
				label={say("online.send.age")}
				name="contact-age"
				value={contact.age}
				options={[
					{ value: "adult", label: say("online.send.adult") },
					{ value: "minor", label: say("online.send.minor") },
				]}
				onChange={(age) =>
					put({ age: age === "minor" ? "minor" : "adult", isConsented: false })
				}
				unsure={null}
			/>
			{isMinor && (
				<Notice>
					<p>{say("online.send.minorHint")}</p>
				</Notice>
			)}
			<TextField
				label={say(isMinor ? "online.send.adultName" : "online.send.name")}
				name="contact-name"
				autoComplete="name"
				maxLength={200}
				value={contact.name}
				error={error("name")}
				onChange={(name) => put({ name })}
			/>
			<TextField
				label={say(
					isMinor ? "online.send.adultContact" : "online.send.contact",
				)}
				hint={say("online.send.contactHint")}
				name="contact-contact"
				autoComplete="email"
				maxLength={400}
				value={contact.contact}
				error={error("contact")}
				onChange={(text) => put({ contact: text })}
			/>
			<TextField
				label={say("online.send.message")}
				hint={say("online.send.messageHint")}
				name="contact-message"
				rows={3}
				value={contact.message}
				error={error("message")}
				onChange={(message) => put({ message })}
			/>
			<div className={styles.trap} aria-hidden="true">
				<label>
					{say("online.send.trap")}
					<input
						type="text"
						name="website"
						tabIndex={-1}
						autoComplete="off"
						value={contact.website}
						onChange={(event) => put({ website: event.target.value })}
					/>
				</label>
			</div>
			<fieldset className={styles.consent}>
				<legend>{say("online.send.consentTitle")}</legend>
				<p>{say("online.send.consentWhat")}</p>
				<p>{say("online.send.consentEnd")}</p>
				<label className={styles.check}>
					<input
						type="checkbox"
						name="contact-isConsented"
						checked={contact.isConsented}
						aria-invalid={error("isConsented") !== null || undefined}
						aria-describedby="consent-error"
						onChange={(event) => put({ isConsented: event.target.checked })}
					/>
					<span>
						{say(isMinor ? "online.send.consentAdult" : "online.send.consent")}
					</span>
				</label>
				<p className={styles.bad} id="consent-error" aria-live="polite">
					{error("isConsented")}
				</p>
			</fieldset>
			{failure !== null && (
				<div ref={failed} tabIndex={-1}>
					<Notice kind="error" title={say("online.send.notSent")} live>
						<p>{failureText(failure)}</p>
					</Notice>
				</div>
			)}
			<div>
				<Button type="submit" look="main" busy={isSending} wide>
					{say(isSending ? "online.send.sending" : "online.send.button")}
				</Button>
			</div>
			{offer.workshop.basis === "invented" && (
				<p className={styles.small}>{say("online.invented")}</p>
			)}
		</form>
	);

	function failureText(now: Failure): string {
		if (now === "no-answer") return say("online.send.noAnswer");
		if ("held" in now) return heldText(now.held, reader);
		switch (now.code) {
			case "trap-full":
				return say("online.send.trapFull");
			case "cannot-be-made":
				return say("online.send.refused");
			case "changed":
				return say("online.send.changed", {
					mass: formatMass(now.massG, reader),
					price: formatAmountBand(now, money, reader),
				});
		}
	}
}
