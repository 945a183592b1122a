import { z } from "zod";
import { sheetQuerySchema } from "@/lib/forms/sheet-query";

/** What a route of a saved revision hands out. */
interface DownloadPath {
	readonly file: string;
	readonly operationId: string;
	readonly summary: string;
	readonly type: string;
	readonly schema: object;
	readonly query: readonly object[];
}

const QUERY_WORDS: Readonly<
	Record<keyof typeof sheetQuerySchema.shape, string>
> = {
	paper: "Size of the sheets; left out, as this workshop has set it",
	units: "Units of the figures; left out, as this reader chose on the pages",
};

/** The query of the job sheet, from the schema the route reads it with. */
const sheetQuery = (): readonly object[] => {
	const { properties = {} } = z.toJSONSchema(sheetQuerySchema, {
		target: "draft-2020-12",
		io: "input",
	});
	return Object.entries(properties).map(([name, schema]) => ({
		name,
		in: "query",
		required: false,
		description: QUERY_WORDS[name as keyof typeof QUERY_WORDS],
		schema,
	}));
};

const downloads = (): readonly DownloadPath[] => [
	{
		file: "sheet.pdf",
		operationId: "downloadJobSheet",
		summary: "The job sheet of a saved revision, for the bench's printer",
		type: "application/pdf",
		schema: {},
		query: sheetQuery(),
	},
	{
		file: "stations.csv",
		operationId: "downloadStations",
		summary: "Diameters at stations from the butt end, for a spreadsheet",
		type: "text/csv",
		schema: { type: "string" },
		query: [],
	},
	{
		file: "spec.json",
		operationId: "downloadSpec",
		summary:
			"Everything that was saved, for another program, after the published schema",
		type: "application/json",
		schema: {
			type: "object",
			description: "Follows the schema at /api/v1/spec.schema.json",
		},
		query: [],
	},
	{
		file: "profile.dxf",
		operationId: "downloadProfile",
		summary:
			"The turned outline at full size, for a drawing program or a lathe",
		type: "image/vnd.dxf",
		schema: { type: "string" },
		query: [],
	},
];

const PLACE = (["number", "revision"] as const).map((name) => ({
	name,
	in: "path",
	required: true,
	description:
		name === "number" ? "Number of the spec" : "Its revision, from 1",
	schema: { type: "integer", minimum: 1, maximum: 999_999_999 },
}));

/** The files of a saved revision as OpenAPI paths, and the schema its JSON follows. */
export const downloadPaths = (
	problemResponse: (description: string) => object,
): Record<string, object> => ({
	...Object.fromEntries(
		downloads().map(({ file, operationId, summary, type, schema, query }) => [
			`/specs/{number}/{revision}/${file}`,
			{
				get: {
					operationId,
					summary,
					parameters: [...PLACE, ...query],
					responses: {
						200: { description: "The file", content: { [type]: { schema } } },
						400: problemResponse("A query that is not as described"),
						404: problemResponse("No saved revision has this number"),
					},
				},
			},
		]),
	),
	"/api/v1/spec.schema.json": {
		get: {
			operationId: "readSpecSchema",
			summary: "The JSON Schema that every spec.json follows",
			responses: {
				200: {
					description: "The schema",
					content: { "application/schema+json": { schema: {} } },
				},
			},
		},
	},
});
