// @ts-check
/// <reference lib="webworker" />
// The worker behind pages that open where no server answers. /worker.js brings in this file after
// saying which build it is of (BUILD) and which files that build is made of (FILES). It keeps those
// and one page without anybody's data, /coaching, which shows what the device itself has kept. No
// answer of the server about a person is ever kept here.

const scope =
	/** @type {ServiceWorkerGlobalScope & {BUILD: string, FILES: string[]}} */ (
		/** @type {unknown} */ (self)
	);
const PREFIX = "coaching-";
const CACHE = PREFIX + scope.BUILD;
const SHELL = "/coaching";
/** A session waits this long for the server before the device's own page is shown. */
const PATIENCE_MS = 10_000;
/** A proxy's words for a server that is not there. */
const AWAY = [502, 503, 504];

scope.addEventListener("install", (event) => {
	event.waitUntil(keepEverything());
});

async function keepEverything() {
	const cache = await caches.open(CACHE);
	await cache.addAll(scope.FILES);
	await keepShell(cache);
}

/** Keeps the page of this build only: another's would ask for files that are not kept. @param {Cache} cache */
async function keepShell(cache) {
	const response = await fetch(SHELL, { cache: "no-store" });
	const text = await response.clone().text();
	if (!response.ok || !text.includes(scope.BUILD))
		throw new Error("the server runs another build by now");
	await cache.put(SHELL, response);
}

scope.addEventListener("activate", (event) => {
	event.waitUntil(
		(async () => {
			// The one before stays: a page of it may still be open and ask for its files.
			const kept = (await caches.keys()).filter((name) =>
				name.startsWith(PREFIX),
			);
			const before = kept.filter((name) => name !== CACHE).at(-1);
			for (const name of kept)
				if (name !== CACHE && name !== before) await caches.delete(name);
			await scope.clients.claim();
		})(),
	);
});

scope.addEventListener("message", (event) => {
	if (event.data === "take-over") event.waitUntil(scope.skipWaiting());
	// Units, language or theme were chosen anew: the kept page is made anew too.
	if (event.data === "keep-shell")
		event.waitUntil(
			caches
				.open(CACHE)
				.then(keepShell)
				.catch(() => {
					// Not reached, or a newer build answers: the page that is kept stays.
				}),
		);
});

scope.addEventListener("fetch", (event) => {
	const { request } = event;
	const url = new URL(request.url);
	if (request.method !== "GET" || url.origin !== scope.location.origin) return;
	if (
		scope.FILES.includes(url.pathname) ||
		url.pathname.startsWith("/_next/static/")
	)
		event.respondWith(kept(request));
	else if (request.mode === "navigate" && opensOffline(url.pathname))
		event.respondWith(page(request, url));
});

/** Files of a build never change: the kept one is the one. @param {Request} request */
async function kept(request) {
	const file = await caches.match(request, { ignoreSearch: true });
	if (file === undefined) return fetch(request);
	// A worker takes its address, and what is told behind it, from the answer where that names one: a
	// fresh answer names none, and the request's own holds.
	return request.destination === "worker"
		? new Response(file.body, { status: file.status, headers: file.headers })
		: file;
}

/** Everything but downloads and the open computation, which have no page to stand in for them. @param {string} path */
const opensOffline = (path) =>
	!path.startsWith("/api/") && !/\.[a-z0-9]{2,5}$/i.test(path);

/** The server's page where it answers. @param {Request} request @param {URL} url */
async function page(request, url) {
	try {
		const response = await inTime(fetch(request), url.pathname);
		if (!AWAY.includes(response.status)) return response;
	} catch {
		// No answer: the device's own page stands in.
	}
	const shell = await caches.match(SHELL);
	if (shell === undefined) return Response.error();
	if (url.pathname === SHELL) return shell;
	const from = encodeURIComponent(url.pathname + url.search);
	return Response.redirect(`${SHELL}?from=${from}`, 302);
}

/** Only a session has something to show meanwhile. @param {Promise<Response>} asked @param {string} path @returns {Promise<Response>} */
function inTime(asked, path) {
	if (path !== "/" && path !== SHELL && !path.startsWith("/fittings"))
		return asked;
	return new Promise((done, fail) => {
		const limit = setTimeout(() => fail(new Error("no answer")), PATIENCE_MS);
		asked.then(done, fail).finally(() => clearTimeout(limit));
	});
}
