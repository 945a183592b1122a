import { readFileSync } from "node:fs";
import vm from "node:vm";
import { beforeEach, describe, expect, test } from "vitest";

const SOURCE = readFileSync("public/offline.js", "utf8");
const ORIGIN = "https://cues.example";
type Handler = (event: Record<string, unknown>) => void;

/** A cache storage in memory: what the worker asks of the real one. */
class FakeCaches {
	readonly stores = new Map<string, Map<string, Response>>();
	async open(name: string) {
		const store = this.stores.get(name) ?? new Map<string, Response>();
		this.stores.set(name, store);
		return {
			addAll: async (paths: string[]) => {
				for (const path of paths) {
					const response = await net(new URL(path, ORIGIN).href);
					if (!response.ok) throw new TypeError(`no ${path}`);
					store.set(path, response);
				}
			},
			put: async (path: string, response: Response) =>
				void store.set(path, response),
		};
	}
	keys = async () => [...this.stores.keys()];
	delete = async (name: string) => this.stores.delete(name);
	match = async (asked: string | { url: string }) => {
		const path =
			typeof asked === "string" ? asked : new URL(asked.url).pathname;
		for (const store of this.stores.values())
			if (store.has(path)) return store.get(path)?.clone();
		return undefined;
	};
}

let caches: FakeCaches;
let network: "up" | "down" | number;
/** The build that the server runs. */
let serverBuild: string;
let asked: string[];
let claimed: number;

async function net(input: string | { url: string }): Promise<Response> {
	const url = new URL(typeof input === "string" ? input : input.url, ORIGIN);
	asked.push(url.pathname + url.search);
	if (network === "down") throw new TypeError("Failed to fetch");
	if (typeof network === "number")
		return new Response("away", { status: network });
	return new Response(
		url.pathname === "/coaching"
			? `<html data-build="${serverBuild}">`
			: `fresh ${url.pathname}`,
	);
}

/** The worker of one build, as a browser would run it. */
function worker(build: string) {
	const handlers = new Map<string, Handler>();
	const self = {
		BUILD: build,
		FILES: ["/_next/static/chunks/a.js", "/manifest.webmanifest"],
		location: new URL(ORIGIN),
		clients: { claim: async () => void claimed++ },
		skipWaiting: async () => undefined,
		addEventListener: (name: string, handler: Handler) =>
			void handlers.set(name, handler),
	};
	vm.runInNewContext(SOURCE, {
		self,
		caches,
		fetch: net,
		Response: Object.assign(Response, {
			// The platform's own wants an absolute address where there is no page.
			redirect: (path: string, status: number) =>
				new Response(null, { status, headers: { location: path } }),
		}),
		URL,
		setTimeout,
		clearTimeout,
		encodeURIComponent,
	});
	const tell = async (name: string, more: object = {}) => {
		const waits: Promise<unknown>[] = [];
		handlers.get(name)?.({
			...more,
			waitUntil: (work: Promise<unknown>) => void waits.push(work),
		});
		await Promise.all(waits);
	};
	return {
		install: () => tell("install"),
		activate: () => tell("activate"),
		say: (data: string) => tell("message", { data }),
		/** Null where the request is left to the browser. */
		ask: async (
			path: string,
			more: { method?: string; mode?: string; destination?: string } = {},
		): Promise<Response | null> => {
			let answer: Promise<Response> | null = null;
			handlers.get("fetch")?.({
				request: {
					url: new URL(path, ORIGIN).href,
					method: "GET",
					mode: "cors",
					destination: "",
					...more,
				},
				respondWith: (given: Promise<Response>) => {
					answer = given;
				},
			});
			return answer;
		},
	};
}
const visit = { mode: "navigate", destination: "document" };

beforeEach(() => {
	caches = new FakeCaches();
	network = "up";
	serverBuild = "b1";
	asked = [];
	claimed = 0;
});

describe("installing", () => {
	test("keeps the build's files and the device's own page, and nothing else", async () => {
		await worker("b1").install();
		expect([...(caches.stores.get("coaching-b1")?.keys() ?? [])]).toEqual([
			"/_next/static/chunks/a.js",
			"/manifest.webmanifest",
			"/coaching",
		]);
	});
	test("fails where the server runs another build by now, or a file is missing", async () => {
		serverBuild = "b2";
		await expect(worker("b1").install()).rejects.toThrow("another build");
		network = 404;
		await expect(worker("b1").install()).rejects.toThrow();
	});
	test("a new build leaves the one before it, for pages that are still open, and no older one", async () => {
		for (const build of ["b1", "b2", "b3"]) {
			serverBuild = build;
			const it = worker(build);
			await it.install();
			await it.activate();
		}
		expect(await caches.keys()).toEqual(["coaching-b2", "coaching-b3"]);
		expect(claimed).toBe(3);
	});
});

describe("with the server", () => {
	test("pages are the server's own, and none of them is kept", async () => {
		const it = worker("b1");
		await it.install();
		const page = await it.ask("/fittings/12/hand", visit);
		expect(await page?.text()).toBe("fresh /fittings/12/hand");
		expect(caches.stores.get("coaching-b1")?.size).toBe(3);
	});
	test.each([
		["the open computation", "/api/v1/advice", visit],
		["a device's own requests", "/device/sync", { method: "POST" }],
		["the players of the device's page", "/device/players", {}],
		["what the router fetches", "/fittings/12/hand?_rsc=x", {}],
		["a download", "/specs/1/1/sheet.pdf", visit],
	])("%s: left to the browser", async (_, path, more) => {
		const it = worker("b1");
		await it.install();
		expect(await it.ask(path, more)).toBeNull();
	});
	test("the kept page is made anew when told, but not with another build's", async () => {
		const it = worker("b1");
		await it.install();
		const before = caches.stores.get("coaching-b1")?.get("/coaching");
		await it.say("keep-shell");
		const again = caches.stores.get("coaching-b1")?.get("/coaching");
		expect(again).not.toBe(before);
		serverBuild = "b2";
		await it.say("keep-shell");
		expect(caches.stores.get("coaching-b1")?.get("/coaching")).toBe(again);
	});
});

describe("without the server", () => {
	test.each(["down", 502, 503, 504] as const)(
		"(%s) a page leads to the device's own, which says what was asked for",
		async (state) => {
			const it = worker("b1");
			await it.install();
			network = state;
			const answer = await it.ask("/fittings/12/hand?a=1", visit);
			expect(answer?.status).toBe(302);
			expect(answer?.headers.get("location")).toBe(
				`/coaching?from=${encodeURIComponent("/fittings/12/hand?a=1")}`,
			);
			const page = await it.ask("/coaching?from=x", visit);
			expect(await page?.text()).toContain('data-build="b1"');
		},
	);
	test("an answer that is an error of its own is shown, not hidden", async () => {
		const it = worker("b1");
		await it.install();
		network = 500;
		expect((await it.ask("/fittings/12/hand", visit))?.status).toBe(500);
	});
	test("files of the build come from what is kept, a worker's without an address of their own", async () => {
		const it = worker("b1");
		await it.install();
		network = "down";
		asked = [];
		for (const destination of ["script", "worker"]) {
			const file = await it.ask("/_next/static/chunks/a.js?dpl=1", {
				destination,
			});
			expect(await file?.text()).toBe("fresh /_next/static/chunks/a.js");
			expect(file?.url).toBe("");
		}
		expect(asked).toEqual([]);
	});
	test("a page of the build before finds its files after the new one took over", async () => {
		await worker("b1").install();
		caches.stores
			.get("coaching-b1")
			?.set("/_next/static/chunks/old.js", new Response("old"));
		serverBuild = "b2";
		const next = worker("b2");
		await next.install();
		await next.activate();
		network = 404;
		const old = await next.ask("/_next/static/chunks/old.js");
		expect(await old?.text()).toBe("old");
	});
});
