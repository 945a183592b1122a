import encodeQR from "qr";

/** A square code that a phone reads, as one path in units of its modules, with its quiet zone. */
export interface JobCode {
	/** What the code says: the address of the job. */
	readonly address: string;
	readonly sizeModules: number;
	readonly path: string;
}

/** ISO/IEC 18004 asks for four light modules all round. */
const QUIET_MODULES = 4;

/**
 * The code of an address. A quarter of it may be soiled or torn and it still reads: a bench is no
 * office. Throws RangeError where the address is too long for any code.
 */
export function jobCode(address: string): JobCode {
	const rows = encodeQR(address, "raw", {
		ecc: "quartile",
		border: QUIET_MODULES,
	});
	return {
		address,
		sizeModules: rows.length,
		path: rows.map(darkRuns).join(""),
	};
}

/** Neighbouring dark modules of a row as one rectangle: fewer seams on screen and paper. */
function darkRuns(row: readonly boolean[], y: number): string {
	let path = "";
	for (let x = 0; x < row.length; x++) {
		if (!row[x]) continue;
		const from = x;
		while (row[x + 1]) x++;
		const width = x + 1 - from;
		path += `M${from} ${y}h${width}v1h${-width}z`;
	}
	return path;
}
