import { readdirSync } from "node:fs";
import { basename, join } from "node:path";
import { pathToFileURL } from "node:url";

// Runs every tests/bench/*.bench.ts, one after the other, so that none disturbs another's times.
// Each exports run(), which returns its figures as text; a name on the command line picks one.
const folder = "tests/bench";
const wanted = process.argv.slice(2);
const files = readdirSync(folder)
	.filter((name) => name.endsWith(".bench.ts"))
	.filter(
		(name) =>
			wanted.length === 0 || wanted.includes(basename(name, ".bench.ts")),
	)
	.sort();
if (files.length === 0)
	throw new Error(`no bench in ${folder} is called ${wanted.join(" or ")}`);

for (const file of files) {
	const bench: { run?: () => string | Promise<string> } = await import(
		pathToFileURL(join(folder, file)).href
	);
	if (typeof bench.run !== "function")
		throw new Error(`${join(folder, file)} does not export run()`);
	console.log(`\n${basename(file, ".bench.ts")}\n${await bench.run()}`);
}
