import { existsSync, readdirSync } from "node:fs";
import { Validator } from "@seriousme/openapi-schema-validator";
import { describe, expect, test } from "vitest";
import { openApiDocument } from "@/lib/documents/openapi";
import { cueBodySchema, shotBodySchema } from "@/lib/forms/api-cue";
import { presentCueBodySchema } from "@/lib/forms/api-present-cue";
import {
	adviceBodySchema,
	fitBodySchema,
	trialBodySchema,
} from "@/lib/forms/api-requests";

interface Post {
	readonly post: {
		readonly requestBody: {
			readonly content: {
				readonly "application/json": { readonly example: unknown };
			};
		};
	};
}
interface Get {
	readonly get: { readonly parameters: readonly { readonly name: string }[] };
}
const document = () =>
	JSON.parse(JSON.stringify(openApiDocument())) as Record<string, unknown> & {
		openapi: string;
		paths: Record<string, Post>;
		components: {
			schemas: Record<string, { properties: Record<string, unknown> }>;
		};
	};

/** OpenAPI 3.1 by its published JSON Schema, through a general-purpose validator. */
describe("the OpenAPI document", () => {
	test("is accepted as OpenAPI 3.1", async () => {
		const result = await new Validator().validate(document());
		expect(result.errors).toBeUndefined();
		expect(result.valid).toBe(true);
	});
	test("the validator would notice", async () => {
		const broken = document();
		broken.paths["/api/v1/cue"] = { post: { responses: 3 } } as unknown as Post;
		expect((await new Validator().validate(broken)).valid).toBe(false);
	});
	test("every path is a route, and its example passes the route's own schema", () => {
		const bodies = {
			cue: cueBodySchema,
			shot: shotBodySchema,
			"present-cue": presentCueBodySchema,
			fit: fitBodySchema,
			advice: adviceBodySchema,
			trial: trialBodySchema,
		};
		const paths = Object.entries(document().paths).filter(
			([path, operations]) =>
				"post" in operations && path !== "/api/v1/cue/picture",
		);
		expect(paths).toHaveLength(Object.keys(bodies).length);
		for (const [path, { post }] of paths) {
			expect(existsSync(`app${path}/route.ts`), path).toBe(true);
			const name = path.split("/").at(-1) as keyof typeof bodies;
			expect(
				bodies[name].safeParse(
					post.requestBody.content["application/json"].example,
				).success,
				path,
			).toBe(true);
		}
	});
	test("every file of a saved revision is a path with its number, revision and query", () => {
		const folder = "app/specs/[number]/[revision]";
		const files = readdirSync(folder).filter((name) => /\.\w+$/.test(name));
		const served = files.filter((name) =>
			existsSync(`${folder}/${name}/route.ts`),
		);
		expect(served).toHaveLength(4);
		const { paths } = document();
		for (const file of served) {
			const { get } = paths[
				`/specs/{number}/{revision}/${file}`
			] as unknown as Get;
			const named = get.parameters.map((one) => one.name);
			expect(named.slice(0, 2)).toEqual(["number", "revision"]);
			expect(named.slice(2)).toEqual(
				file === "sheet.pdf" ? ["paper", "units"] : [],
			);
		}
		expect(
			Object.keys(paths).filter((path) => path.startsWith("/specs/")),
		).toHaveLength(served.length);
	});
	test("names carry units and bounds are the forms' own", () => {
		expect(document().components.schemas.CueBody?.properties).toMatchObject({
			cue: {
				properties: { lengthMm: { minimum: 900, maximum: 1650 } },
				additionalProperties: false,
			},
		});
	});
});
