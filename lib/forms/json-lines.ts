/** A JSON text with the line of every value in it, or the line where it stops being JSON. */
export type JsonLines =
	| {
			readonly ok: true;
			readonly value: unknown;
			/** Line, from 1, of the value at a path; of the nearest value above it where there is none. */
			readonly lineAt: (path: readonly PropertyKey[]) => number;
	  }
	| { readonly ok: false; readonly line: number; readonly found: string };

const keyOf = (path: readonly PropertyKey[]): string =>
	path.map((step) => `/${String(step).replaceAll("/", "~")}`).join("");

// biome-ignore lint/suspicious/noControlCharactersInRegex: RFC 8259 names those that a string may not hold
const STRING = /"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/y;
const SCALAR = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null/y;
const SPACE = /[ \t\n\r]*/y;

class NotJson extends Error {
	constructor(readonly at: number) {
		super(`not JSON at ${at}`);
	}
}

/** Walks a JSON text (RFC 8259) and notes where each value begins; deeper than 100 is not followed. */
class Walk {
	readonly places = new Map<string, number>();
	#at = 0;
	constructor(readonly text: string) {}

	#take(pattern: RegExp): string | null {
		pattern.lastIndex = this.#at;
		const [found] = pattern.exec(this.text) ?? [];
		if (found === undefined) return null;
		this.#at += found.length;
		return found;
	}

	#sign(sign: string): boolean {
		this.#take(SPACE);
		if (this.text[this.#at] !== sign) return false;
		this.#at++;
		return true;
	}

	#need(sign: string): void {
		if (!this.#sign(sign)) throw new NotJson(this.#at);
	}

	whole(): void {
		this.#value([]);
		this.#take(SPACE);
		if (this.#at < this.text.length) throw new NotJson(this.#at);
	}

	#value(path: readonly PropertyKey[]): void {
		if (path.length > 100) throw new NotJson(this.#at);
		this.#take(SPACE);
		this.places.set(keyOf(path), this.#at);
		if (this.#sign("{")) {
			if (this.#sign("}")) return;
			do {
				this.#take(SPACE);
				const name = this.#take(STRING);
				if (name === null) throw new NotJson(this.#at);
				this.#need(":");
				this.#value([...path, JSON.parse(name) as string]);
			} while (this.#sign(","));
			this.#need("}");
		} else if (this.#sign("[")) {
			if (this.#sign("]")) return;
			let place = 0;
			do this.#value([...path, place++]);
			while (this.#sign(","));
			this.#need("]");
		} else if (this.#take(STRING) === null && this.#take(SCALAR) === null)
			throw new NotJson(this.#at);
	}
}

export function readJsonLines(text: string): JsonLines {
	const lineOf = (at: number) => text.slice(0, at).split("\n").length;
	const walk = new Walk(text);
	try {
		walk.whole();
	} catch (error) {
		if (!(error instanceof NotJson)) throw error;
		const found = text.slice(error.at, error.at + 20).split("\n")[0] ?? "";
		return { ok: false, line: lineOf(error.at), found };
	}
	return {
		ok: true,
		value: JSON.parse(text),
		lineAt: (path) => {
			for (let length = path.length; length > 0; length--) {
				const at = walk.places.get(keyOf(path.slice(0, length)));
				if (at !== undefined) return lineOf(at);
			}
			return 1;
		},
	};
}
