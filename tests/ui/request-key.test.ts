import { expect, test } from "vitest";
import { z } from "zod";
import { newRecordId, newRequestKey } from "@/app/_ui/request-key";

test("keys are random UUIDs", () => {
	const keys = Array.from({ length: 50 }, newRequestKey);
	expect(new Set(keys).size).toBe(50);
	for (const key of keys) expect(z.uuidv4().safeParse(key).success).toBe(true);
});

test("ids carry their millisecond as RFC 9562 lays it out, and sort by it", () => {
	// The RFC's own example (appendix A.6): 017F22E2-79B0-7CC3-98C4-DC0C0C07398F.
	const at = new Date("2022-02-22T19:22:22.000Z");
	const id = newRecordId(at);
	expect(z.uuidv7().safeParse(id).success).toBe(true);
	expect(id.slice(0, 14).toUpperCase()).toBe("017F22E2-79B0-");
	expect(newRecordId(new Date(at.getTime() + 1)) > id).toBe(true);
});
