import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const root = fileURLToPath(new URL(".", import.meta.url));
export const alias = {
	"@": root.replace(/\/$/, ""),
	// The package only guards bundles; outside one it would throw.
	"server-only": `${root}node_modules/server-only/empty.js`,
};

export default defineConfig({
	test: {
		projects: [
			{
				resolve: { alias },
				test: {
					name: "unit",
					include: ["tests/**/*.test.ts"],
					exclude: ["tests/browser/**"],
					// A bound against hanging, not a measure of speed: that is the bench's.
					testTimeout: 120_000,
				},
			},
			{
				resolve: { alias },
				test: {
					name: "browser",
					include: ["tests/browser/**/*.test.ts"],
					globalSetup: "tests/support/server.ts",
					testTimeout: 60_000,
					hookTimeout: 60_000,
					fileParallelism: false,
				},
			},
		],
	},
});
