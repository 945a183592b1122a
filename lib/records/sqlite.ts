import "server-only";
import { mkdirSync } from "node:fs";
import { dirname, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import {
	type Client,
	type Config,
	createClient,
	type InStatement,
	type Replicated,
	type ResultSet,
	type Transaction,
} from "@libsql/client";
import { PrismaLibSql } from "@prisma/adapter-libsql";
import { databaseFile } from "@/lib/records/location";
import { BUSY_TIMEOUT_MS, connectionPragmas } from "@/lib/records/pragmas";

/**
 * The driver's client on one connection that is kept. By itself the driver gives its connection away
 * with each transaction and opens another afterwards, without the pragmas set on the first; and the
 * ORM's adapter begins transactions DEFERRED, so that two processes that read and then write fail
 * instead of taking turns. The adapter lets one statement or one transaction at a time reach its
 * client, so one connection is enough.
 */
class OneConnectionClient implements Client {
	readonly protocol = "file";
	readonly #inner: Client;
	#prepared = false;

	constructor(config: Config) {
		this.#inner = createClient({ ...config, timeout: BUSY_TIMEOUT_MS });
	}

	async #ready(): Promise<Client> {
		if (!this.#prepared) {
			for (const pragma of connectionPragmas) await this.#inner.execute(pragma);
			this.#prepared = true;
		}
		return this.#inner;
	}

	async execute(statement: InStatement): Promise<ResultSet> {
		return (await this.#ready()).execute(statement);
	}

	async batch(...parameters: Parameters<Client["batch"]>) {
		return (await this.#ready()).batch(...parameters);
	}

	async executeMultiple(sql: string): Promise<void> {
		return (await this.#ready()).executeMultiple(sql);
	}

	async transaction(): Promise<Transaction> {
		await this.execute("BEGIN IMMEDIATE");
		return new KeptTransaction(this);
	}

	migrate(): Promise<ResultSet[]> {
		throw new Error("migrations are applied by lib/records/migrate.ts");
	}

	sync(): Promise<Replicated> {
		return this.#inner.sync();
	}

	reconnect(): void {
		this.#prepared = false;
		this.#inner.reconnect();
	}

	close(): void {
		this.#inner.close();
	}

	get closed(): boolean {
		return this.#inner.closed;
	}
}

class KeptTransaction implements Transaction {
	closed = false;
	readonly #client: OneConnectionClient;

	constructor(client: OneConnectionClient) {
		this.#client = client;
	}

	execute(statement: InStatement): Promise<ResultSet> {
		if (this.closed) throw new Error("the transaction is closed");
		return this.#client.execute(statement);
	}

	async batch(statements: InStatement[]): Promise<ResultSet[]> {
		const results: ResultSet[] = [];
		for (const statement of statements)
			results.push(await this.execute(statement));
		return results;
	}

	executeMultiple(): Promise<void> {
		throw new Error("a script does not run inside a transaction");
	}

	async commit(): Promise<void> {
		try {
			await this.execute("COMMIT");
			this.closed = true;
		} catch (error) {
			// A full disk can leave the transaction open, and the connection is used again.
			await this.rollback().catch((rollbackError: Error) => {
				if (rollbackError.message.includes("no transaction is active")) return;
				throw new AggregateError([error, rollbackError], "commit failed");
			});
			throw error;
		}
	}

	async rollback(): Promise<void> {
		if (this.closed) return;
		this.closed = true;
		await this.#client.execute("ROLLBACK");
	}

	close(): void {
		if (!this.closed) void this.rollback();
	}
}

class OneConnectionAdapter extends PrismaLibSql {
	override createClient(config: Config): Client {
		return new OneConnectionClient(config);
	}
}

/** Creates the folder of the file where it is missing. */
export function sqliteAdapter(databaseUrl: string | undefined) {
	const file = resolve(databaseFile(databaseUrl));
	mkdirSync(dirname(file), { recursive: true });
	return new OneConnectionAdapter({ url: pathToFileURL(file).href });
}
