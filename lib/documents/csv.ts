/** What a program that opens the file as a spreadsheet would take for a formula. */
const FORMULA = /^[=+\-@\t\r]/;

/**
 * One field of RFC 4180: quoted where it holds a comma, a quote or a line end, quotes doubled. A text
 * that a spreadsheet would run as a formula gets an apostrophe in front, which it shows as plain text.
 */
export function csvField(text: string): string {
	const safe = FORMULA.test(text) ? `'${text}` : text;
	return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** Records of RFC 4180: every line ends in CRLF, the first is the headings. */
export function csvText(
	headings: readonly string[],
	records: readonly (readonly string[])[],
): string {
	for (const [i, record] of records.entries())
		if (record.length !== headings.length)
			throw new RangeError(
				`record ${i} has ${record.length} fields, the headings ${headings.length}`,
			);
	return [headings, ...records]
		.map((record) => `${record.map(csvField).join(",")}\r\n`)
		.join("");
}
