import jsQR from "jsqr";
import { describe, expect, test } from "vitest";
import { type JobCode, jobCode } from "@/lib/documents/job-code";

/** Draws the path by its own letters, M h v h z, and asks an independent decoder. */
function read({ path, sizeModules }: JobCode, scale = 4): string | undefined {
	const sizePx = sizeModules * scale;
	const rgba = new Uint8ClampedArray(4 * sizePx * sizePx).fill(255);
	for (const [, x, y, width] of path.matchAll(/M(\d+) (\d+)h(\d+)v1h-\3z/g))
		for (let j = 0; j < scale; j++)
			for (let i = 0; i < Number(width) * scale; i++) {
				const at =
					4 * ((Number(y) * scale + j) * sizePx + Number(x) * scale + i);
				rgba.fill(0, at, at + 3);
			}
	return jsQR(rgba, sizePx, sizePx)?.data;
}

describe("the code of a job", () => {
	test.each([
		"http://127.0.0.1:3000/specs/1/1",
		"https://cues.example.org/specs/12/3",
		"https://a-rather-long-name.of-a-workshop.example.org:8443/specs/999999999/999999999",
		"http://[2001:db8::1]:3000/specs/7/2",
	])("%s is read by an independent decoder", (address) => {
		expect(read(jobCode(address))).toBe(address);
	});
	test("stands in four light modules all round, as ISO/IEC 18004 asks", () => {
		const { path, sizeModules } = jobCode(
			"https://cues.example.org/specs/12/3",
		);
		const runs = [...path.matchAll(/M(\d+) (\d+)h(\d+)/g)].map((run) =>
			run.slice(1).map(Number),
		);
		expect(Math.min(...runs.map(([x = 0]) => x))).toBe(4);
		expect(Math.min(...runs.map(([, y = 0]) => y))).toBe(4);
		expect(Math.max(...runs.map(([x = 0, , width = 0]) => x + width))).toBe(
			sizeModules - 4,
		);
		// 17 modules and four more for each version.
		expect((sizeModules - 8 - 17) % 4).toBe(0);
	});
	test("another address is another code", () => {
		expect(jobCode("http://a/specs/1/1").path).not.toBe(
			jobCode("http://a/specs/1/2").path,
		);
	});
	test("an address too long for any code is refused", () => {
		expect(() => jobCode(`http://a/${"x".repeat(3000)}`)).toThrow();
	});
});
