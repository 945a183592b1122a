import { z } from "zod";
import { sheetQuerySchema } from "@/lib/forms/sheet-query";

/** What a route of a saved revision or of a job hands out. */
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

/** `Of` ends each operation's name: the files of a spec and of a job are the same but for the JSON. */
const downloads = (
	of: "" | "OfJob",
	whole: DownloadPath,
): readonly DownloadPath[] => [
	{
		file: "sheet.pdf",
		operationId: `downloadJobSheet${of}`,
		summary: "The job sheet, for the bench's printer",
		type: "application/pdf",
		schema: {},
		query: sheetQuery(),
	},
	{
		file: "stations.csv",
		operationId: `downloadStations${of}`,
		summary: "Diameters at stations from the butt end, for a spreadsheet",
		type: "text/csv",
		schema: { type: "string" },
		query: [],
	},
	whole,
	{
		file: "profile.dxf",
		operationId: `downloadProfile${of}`,
		summary:
			"The turned outline at full size, for a drawing program or a lathe",
		type: "image/vnd.dxf",
		schema: { type: "string" },
		query: [],
	},
];

const wholeOf = (name: "spec" | "job"): DownloadPath => ({
	file: `${name}.json`,
	operationId: name === "spec" ? "downloadSpec" : "downloadJob",
	summary:
		name === "spec"
			? "Everything that was saved, for another program, after the published schema"
			: "What the bench builds by, for another program, after the published schema",
	type: "application/json",
	schema: {
		type: "object",
		description: `Follows the schema at /api/v1/${name}.schema.json`,
	},
	query: [],
});

const place = (name: string, description: string) => ({
	name,
	in: "path",
	required: true,
	description,
	schema: { type: "integer", minimum: 1, maximum: 999_999_999 },
});

/** The files of a saved revision and of a job as OpenAPI paths, and the schemas their JSON follows. */
export const downloadPaths = (
	problemResponse: (description: string) => object,
): Record<string, object> => {
	const filesAt = (
		address: string,
		places: readonly object[],
		missing: string,
		files: readonly DownloadPath[],
	) =>
		files.map(
			({ file, operationId, summary, type, schema, query }) =>
				[
					`${address}/${file}`,
					{
						get: {
							operationId,
							summary,
							parameters: [...places, ...query],
							responses: {
								200: {
									description: "The file",
									content: { [type]: { schema } },
								},
								400: problemResponse("A query that is not as described"),
								404: problemResponse(missing),
							},
						},
					},
				] as const,
		);
	const schemaAt = (name: "spec" | "job", operationId: string) =>
		[
			`/api/v1/${name}.schema.json`,
			{
				get: {
					operationId,
					summary: `The JSON Schema that every ${name}.json follows`,
					responses: {
						200: {
							description: "The schema",
							content: { "application/schema+json": { schema: {} } },
						},
					},
				},
			},
		] as const;
	return Object.fromEntries([
		...filesAt(
			"/specs/{number}/{revision}",
			[
				place("number", "Number of the spec"),
				place("revision", "Its revision, from 1"),
			],
			"No saved revision has this number",
			downloads("", wholeOf("spec")),
		),
		...filesAt(
			"/workshop/{number}",
			[place("number", "Number of the job")],
			"No job has this number",
			downloads("OfJob", wholeOf("job")),
		),
		schemaAt("spec", "readSpecSchema"),
		schemaAt("job", "readJobSchema"),
	]);
};
