/** A record of a CSV file with the line, from 1, that it begins on. */
export interface CsvRecord {
	readonly line: number;
	readonly fields: readonly string[];
}

export type CsvRead =
	| {
			readonly ok: true;
			readonly records: readonly CsvRecord[];
			/** What stands between fields: a comma, or the semicolon of spreadsheets with a decimal comma. */
			readonly separator: "," | ";";
	  }
	/** A quote stands where RFC 4180 has none, or is never closed. */
	| { readonly ok: false; readonly line: number };

/**
 * RFC 4180, with either line end and either separator, whichever the first line has more of outside
 * quotes. Empty lines are left out; a byte order mark too.
 */
export function readCsv(file: string): CsvRead {
	const text = file.replace(/^\ufeff/, "");
	const separator = separatorOf(text);
	const records: CsvRecord[] = [];
	let fields: string[] = [];
	let line = 1;
	let began = 1;
	let at = 0;
	const end = () => {
		if (fields.length > 1 || fields[0] !== "")
			records.push({ line: began, fields });
		fields = [];
	};
	while (at <= text.length) {
		let field = "";
		if (text[at] === '"') {
			const opened = line;
			let close = at + 1;
			for (;;) {
				close = text.indexOf('"', close);
				if (close < 0) return { ok: false, line: opened };
				if (text[close + 1] !== '"') break;
				close += 2;
			}
			const inside = text.slice(at + 1, close);
			line += inside.split("\n").length - 1;
			field = inside.replaceAll('""', '"');
			at = close + 1;
			const next = text[at];
			if (next !== undefined && !`${separator}\r\n`.includes(next))
				return { ok: false, line };
		} else {
			let stop = at;
			while (
				stop < text.length &&
				!`${separator}\r\n`.includes(text[stop] as string)
			)
				stop++;
			field = text.slice(at, stop);
			if (field.includes('"')) return { ok: false, line };
			at = stop;
		}
		fields.push(field);
		if (text[at] === separator) {
			at++;
			continue;
		}
		end();
		if (at >= text.length) break;
		at += text.startsWith("\r\n", at) ? 2 : 1;
		line++;
		began = line;
		if (at >= text.length) break;
	}
	return { ok: true, records, separator };
}

function separatorOf(text: string): "," | ";" {
	const first = (/^(?:"(?:[^"]|"")*"|[^\r\n"])*/.exec(text)?.[0] ?? "").replace(
		/"(?:[^"]|"")*"/g,
		"",
	);
	const count = (sign: string) => first.split(sign).length - 1;
	return count(";") > count(",") ? ";" : ",";
}
