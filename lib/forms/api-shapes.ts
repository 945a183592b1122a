import { z } from "zod";

/**
 * What the API returns, for the OpenAPI document. The handlers return the models' own results; the
 * tests hold every result to these schemas. Objects are open: later versions may add members.
 */
export const open = <Shape extends z.ZodRawShape>(shape: Shape) =>
	z.looseObject(shape);

export const estimateSchema = open({
	value: z.number(),
	sd: z
		.number()
		.min(0)
		.describe("One standard deviation, in the unit of the owner's name"),
	standing: z.enum([
		"measured",
		"published",
		"derived",
		"common-practice",
		"assumed",
	]),
	sources: z.array(z.string()),
});
export const bandSchema = open({ low: z.number(), high: z.number() });
export const cautionSchema = open({
	code: z.string(),
	facts: z.record(z.string(), z.union([z.number(), z.string()])).optional(),
});
export const refusalSchema = open({
	code: z.string(),
	field: z.string(),
	value: z.union([z.number(), z.string(), z.null()]),
	min: z.number().optional(),
	max: z.number().optional(),
	facts: z.record(z.string(), z.union([z.number(), z.string()])).optional(),
});

export const problemDetailsSchema = open({
	type: z.string(),
	title: z.string(),
	status: z.number().int(),
	detail: z.string(),
	errors: z.array(
		open({
			pointer: z.string().optional(),
			field: z.string(),
			code: z.string(),
			value: z.unknown(),
			min: z.number().optional(),
			max: z.number().optional(),
		}),
	),
});
