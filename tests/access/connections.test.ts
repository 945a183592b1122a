import { createServer } from "node:http";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { placeOf } from "@/lib/access/address";
import { askConnections } from "../../scripts/connections.mjs";
import { readEnvironment } from "../../scripts/environment.mjs";
import { temporaryFolder } from "../support/database";

let address = "";
const server = createServer((request, response) => {
	const header = request.headers["x-forwarded-for"];
	response.end(placeOf(typeof header === "string" ? header : null));
});
beforeAll(async () => {
	await new Promise<void>((done) => server.listen(0, "127.0.0.1", done));
	const bound = server.address();
	if (bound === null || typeof bound === "string") throw new Error("no port");
	address = `http://127.0.0.1:${bound.port}`;
});
afterAll(() => {
	server.close();
});
const claimed = async () =>
	(
		await fetch(address, { headers: { "X-Forwarded-For": "192.0.2.7" } })
	).text();

test("what a request claims of where it comes from counts only behind a proxy", async () => {
	expect(await claimed()).toBe("192.0.2.7");
	askConnections();
	expect(await claimed()).toBe("127.0.0.1");
});

describe("the environment", () => {
	const folder = temporaryFolder();
	afterAll(() => folder.remove());
	const read = (env: Record<string, string>) =>
		readEnvironment({ NODE_ENV: "test", DATA_DIR: folder.path, ...env });

	test("says how much work a browser does and whether a proxy stands before it", () => {
		expect(read({})).toMatchObject({ workBits: 14, isBehindProxy: false });
		expect(read({ ONLINE_WORK_BITS: "0", BEHIND_PROXY: "yes" })).toMatchObject({
			workBits: 0,
			isBehindProxy: true,
		});
	});

	test.each<Record<string, string>>([
		{ ONLINE_WORK_BITS: "25" },
		{ ONLINE_WORK_BITS: "-1" },
		{ ONLINE_WORK_BITS: "1.5" },
		{ BEHIND_PROXY: "1" },
	])("refuses %o by its name", (env) => {
		expect(() => read(env)).toThrow(Object.keys(env)[0]);
	});
});
