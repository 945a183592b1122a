import { describe, expect, test } from "vitest";
import { hashedPlace, placeOf } from "@/lib/access/address";

describe("where a request comes from", () => {
	test.each([
		// Addresses set aside for documentation: RFC 5737 and RFC 3849.
		["192.0.2.7", "192.0.2.7"],
		["198.51.100.1, 192.0.2.7", "192.0.2.7"],
		["::ffff:192.0.2.7", "192.0.2.7"],
		["2001:db8:1:2:3:4:5:6", "2001:0db8:0001:0002::/64"],
		["2001:DB8:1:2::9", "2001:0db8:0001:0002::/64"],
		["2001:db8::1", "2001:0db8:0000:0000::/64"],
		["::1", "0000:0000:0000:0000::/64"],
		["fe80::1%eth0", "fe80:0000:0000:0000::/64"],
		["not an address", "unknown"],
		["", "unknown"],
		[null, "unknown"],
	])("%s", (header, place) => {
		expect(placeOf(header)).toBe(place);
	});
});

test("what is kept of a place differs from day to day and does not hold it", () => {
	const kept = hashedPlace("192.0.2.7", "one day");
	expect(kept).toMatch(/^[0-9a-f]{32}$/);
	expect(hashedPlace("192.0.2.7", "one day")).toBe(kept);
	expect(hashedPlace("192.0.2.7", "the next")).not.toBe(kept);
	expect(hashedPlace("192.0.2.8", "one day")).not.toBe(kept);
});
