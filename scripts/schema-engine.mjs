#!/usr/bin/env node
// Stands in for the ORM's native schema engine where that cannot be downloaded: the same arguments
// and the same JSON-RPC over standard input and output, carried out by the engine's WebAssembly build
// through the SQLite driver. For authoring and checking migrations; the running app never needs it
// (lib/records/migrate.ts applies them). The command line only looks whether this file is executable.
import {
	closeSync,
	existsSync,
	mkdtempSync,
	openSync,
	readFileSync,
	rmSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { createInterface } from "node:readline";
import { fileURLToPath, pathToFileURL } from "node:url";

const args = process.argv.slice(2);
const datasource = JSON.parse(args[args.indexOf("--datasource") + 1] ?? "{}");
const url = datasource.url || process.env.DATABASE_URL;
if (!url?.startsWith("file:")) {
	throw new Error(
		`DATABASE_URL must name a SQLite file as file:<path>, got ${url}`,
	);
}
const file = url.startsWith("file://")
	? fileURLToPath(url)
	: resolve(url.slice("file:".length));
const removeDatabase = (path) => {
	for (const suffix of ["", "-journal", "-wal", "-shm"]) {
		rmSync(path + suffix, { force: true });
	}
};

const openConnections = new Set();
const shadowFolders = new Set();

async function connect(path) {
	const { PrismaLibSql } = await import("@prisma/adapter-libsql");
	const connection = await new PrismaLibSql({
		url: pathToFileURL(path).href,
	}).connect();
	// The engine sends whole migration scripts as one raw statement; the driver would run the first only.
	const executeRaw = connection.executeRaw.bind(connection);
	connection.executeRaw = async (query) => {
		if (query.args.length > 0) return executeRaw(query);
		await connection.executeScript(query.sql);
		return 0;
	};
	const dispose = connection.dispose.bind(connection);
	connection.dispose = async () => {
		if (openConnections.delete(connection)) await dispose();
	};
	openConnections.add(connection);
	return connection;
}

const driver = {
	provider: "sqlite",
	adapterName: "@prisma/adapter-libsql",
	connect: () => connect(file),
	// A file, not memory: the driver changes connections after a transaction and would lose it.
	connectToShadowDb: () => {
		const folder = mkdtempSync(join(tmpdir(), "shadow-"));
		shadowFolders.add(folder);
		return connect(join(folder, "shadow.db"));
	},
};

async function closeAll() {
	for (const connection of [...openConnections]) await connection.dispose();
	for (const folder of shadowFolders) rmSync(folder, { recursive: true });
	shadowFolders.clear();
}

/** As the ORM lays it out. The WebAssembly engine does not recognise SQLite's "no such table", so an empty database gets it first. */
const HISTORY_TABLE = `CREATE TABLE "_prisma_migrations" ("id" TEXT PRIMARY KEY NOT NULL, "checksum" TEXT NOT NULL, "finished_at" DATETIME, "migration_name" TEXT NOT NULL, "logs" TEXT, "rolled_back_at" DATETIME, "started_at" DATETIME NOT NULL DEFAULT current_timestamp, "applied_steps_count" INTEGER UNSIGNED NOT NULL DEFAULT 0)`;

async function ensureHistory() {
	const { default: Database } = await import("libsql");
	const database = new Database(file);
	const tables = database
		.prepare(
			"SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%'",
		)
		.all();
	if (tables.length === 0) database.exec(HISTORY_TABLE);
	database.close();
}

let bindings;
async function engine() {
	if (!bindings) {
		bindings = await import("@prisma/schema-engine-wasm/schema_engine_bg");
		const wasm = new URL(
			"./schema_engine_bg.wasm",
			import.meta.resolve("@prisma/schema-engine-wasm/schema_engine_bg"),
		);
		const { instance } = await WebAssembly.instantiate(readFileSync(wasm), {
			"./schema_engine_bg.js": bindings,
		});
		bindings.__wbg_set_wasm(instance.exports);
		instance.exports.__wbindgen_start?.();
	}
	const { bindMigrationAwareSqlAdapterFactory } = await import(
		"@prisma/driver-adapter-utils"
	);
	await ensureHistory();
	return bindings.SchemaEngine.new(
		{ datamodels: undefined },
		() => {},
		bindMigrationAwareSqlAdapterFactory(driver),
	);
}

async function call(method, params) {
	if (method === "createDatabase") return { databaseName: url };
	if (method === "reset") {
		// The engine would only empty the tables; a new file also forgets their shape.
		removeDatabase(file);
		await ensureHistory();
		return {};
	}
	const instance = await engine(); // a new one each call, so that no lock outlives the call
	if (method === "evaluateDataLoss" || method === "createMigration") {
		// These reach the shadow database only through what devDiagnostic has remembered.
		await instance.devDiagnostic({
			migrationsList: params.migrationsList,
			filters: params.filters,
		});
	}
	const name = method === "getDatabaseVersion" ? "version" : method;
	return (await instance[name](params)) ?? {};
}

const send = (message) =>
	process.stdout.write(`${JSON.stringify({ jsonrpc: "2.0", ...message })}\n`);

/** The engine's one-shot commands report on standard error, one JSON object a line. */
function runCommand(command) {
	const log = (level, fields) =>
		process.stderr.write(
			`${JSON.stringify({ timestamp: new Date().toISOString(), level, fields, target: "schema_engine::logger" })}\n`,
		);
	log("INFO", { message: command }); // the command line skips the first line
	if (command === "can-connect-to-database" && !existsSync(file)) {
		log("ERROR", {
			message: `Database \`${file}\` does not exist`,
			error_code: "P1003",
			is_panic: false,
			meta: {},
		});
		process.exitCode = 1;
		return;
	}
	if (command === "create-database") closeSync(openSync(file, "a"));
	if (command === "drop-database") removeDatabase(file);
	log("INFO", { message: "OK" });
}

async function serve() {
	for await (const line of createInterface({ input: process.stdin })) {
		if (!line.trim()) continue;
		const { id, method, params } = JSON.parse(line);
		try {
			const result = await call(method, params);
			if (method === "diff" && result.stdout != null) {
				send({ id: null, method: "print", params: { content: result.stdout } });
			}
			send({ id, result });
		} catch (error) {
			send({
				id,
				error: {
					code: 4466,
					message: "error",
					data: {
						is_panic: false,
						message: String(error?.message ?? error),
						error_code: error?.code ?? null,
						meta: error?.meta ?? {},
					},
				},
			});
		} finally {
			await closeAll();
		}
	}
}

if (args.includes("cli")) runCommand(args[args.indexOf("cli") + 1]);
else await serve();
