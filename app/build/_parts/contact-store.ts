import { type Contact, EMPTY_CONTACT } from "./contact";

/** In this tab alone, and gone with it: names stay on no device that others may use after. */
const KEY = "online-contact";

export function readContact(): Contact | null {
	try {
		const stored: unknown = JSON.parse(sessionStorage.getItem(KEY) ?? "null");
		if (typeof stored !== "object" || stored === null) return null;
		const { age, name, contact, message } = stored as Record<string, unknown>;
		return {
			...EMPTY_CONTACT,
			age: age === "minor" ? "minor" : "adult",
			name: typeof name === "string" ? name : "",
			contact: typeof contact === "string" ? contact : "",
			message: typeof message === "string" ? message : "",
		};
	} catch {
		return null; // no storage, or damaged: asked again
	}
}

/** Without the consent, which is given anew, and without the trap. */
export function keepContact({ age, name, contact, message }: Contact): void {
	try {
		sessionStorage.setItem(
			KEY,
			JSON.stringify({ age, name, contact, message }),
		);
	} catch {
		// Nothing survives a reload then; what is typed stands on the page.
	}
}

export function forgetContact(): void {
	try {
		sessionStorage.removeItem(KEY);
	} catch {
		// Nothing was stored then.
	}
}
