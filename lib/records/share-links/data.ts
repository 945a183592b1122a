import "server-only";
import { createHash, randomBytes } from "node:crypto";

/** 256 bits from the system's generator: 43 characters of an address. */
const TOKEN_BYTES = 32;
const TOKEN = /^[A-Za-z0-9_-]{43}$/;

export const newToken = (): string =>
	randomBytes(TOKEN_BYTES).toString("base64url");

/** Only this is kept. A hash without salt does: there is nothing to guess in 256 random bits. */
export const tokenHash = (token: string): string =>
	createHash("sha256").update(token).digest("hex");

export const isToken = (text: string): boolean => TOKEN.test(text);

/** What a link opens: one of the two. */
export type LinkTarget =
	| { readonly jobId: string }
	| { readonly onlineCueId: string };

export interface ShareLinkRecord {
	readonly id: string;
	readonly jobId: string | null;
	readonly onlineCueId: string | null;
	readonly createdAt: Date;
	readonly expiresAt: Date | null;
	readonly revokedAt: Date | null;
}

export const linkSelection = {
	id: true,
	jobId: true,
	onlineCueId: true,
	createdAt: true,
	expiresAt: true,
	revokedAt: true,
} as const;
