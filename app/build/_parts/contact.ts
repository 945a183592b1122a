/** Who asks for a cue, as typed. */
export interface Contact {
	readonly age: "adult" | "minor";
	readonly name: string;
	readonly contact: string;
	readonly message: string;
	readonly isConsented: boolean;
	/** Shown to no person: only what fills in every field fills it in. */
	readonly website: string;
}

export const EMPTY_CONTACT: Contact = {
	age: "adult",
	name: "",
	contact: "",
	message: "",
	isConsented: false,
	website: "",
};

type Problem =
	| "nameMissing"
	| "contactMissing"
	| "contactShape"
	| "consentMissing"
	| "tooLong";

const MOST_MESSAGE = 1500;

/** An e-mail address or a telephone number: enough to see that something can be answered to. */
const isReachable = (text: string): boolean =>
	/^[^\s@]+@[^\s@]+\.[^\s@]+$/.test(text) ||
	(/^[+()\d\s/.-]+$/.test(text) && (text.match(/\d/g)?.length ?? 0) >= 5);

/** What keeps a cue from being sent, in the order of the form. */
export function contactProblems({
	name,
	contact,
	message,
	isConsented,
}: Contact): Partial<Record<keyof Contact, Problem>> {
	const reach = contact.trim();
	return {
		...(name.trim() === "" && { name: "nameMissing" as const }),
		...(reach === ""
			? { contact: "contactMissing" as const }
			: !isReachable(reach) && { contact: "contactShape" as const }),
		...(message.trim().length > MOST_MESSAGE && {
			message: "tooLong" as const,
		}),
		...(!isConsented && { isConsented: "consentMissing" as const }),
	};
}
