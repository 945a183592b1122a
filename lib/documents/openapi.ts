import { z } from "zod";
import { MODEL_VERSION } from "@/lib/advice/version";
import { cueBodySchema, shotBodySchema } from "@/lib/forms/api-cue";
import { fitResponseSchema } from "@/lib/forms/api-fit-response";
import { presentCueBodySchema } from "@/lib/forms/api-present-cue";
import {
	adviceBodySchema,
	fitBodySchema,
	trialBodySchema,
} from "@/lib/forms/api-requests";
import {
	adviceResponseSchema,
	cueResponseSchema,
	presentCueResponseSchema,
	shotResponseSchema,
} from "@/lib/forms/api-responses";
import { problemDetailsSchema } from "@/lib/forms/api-shapes";
import { trialResponseSchema } from "@/lib/forms/api-trial-response";
import { cuePictureSchema } from "@/lib/forms/cue-picture-request";
import { downloadPaths } from "./openapi-downloads";

const SCHEMAS = {
	CueBody: [cueBodySchema, "input"],
	CuePictureBody: [cuePictureSchema, "input"],
	PresentCueBody: [presentCueBodySchema, "input"],
	ShotBody: [shotBodySchema, "input"],
	FitBody: [fitBodySchema, "input"],
	AdviceBody: [adviceBodySchema, "input"],
	TrialBody: [trialBodySchema, "input"],
	CueAnswer: [cueResponseSchema, "output"],
	PresentCueAnswer: [presentCueResponseSchema, "output"],
	ShotAnswer: [shotResponseSchema, "output"],
	FitAnswer: [fitResponseSchema, "output"],
	AdviceAnswer: [adviceResponseSchema, "output"],
	TrialAnswer: [trialResponseSchema, "output"],
	ProblemDetails: [problemDetailsSchema, "output"],
} as const;

/** OpenAPI 3.1 takes JSON Schema 2020-12 as it is; the dialect is named once for the document. */
function jsonSchemaOf(name: keyof typeof SCHEMAS): object {
	const [schema, io] = SCHEMAS[name];
	const { $schema: _dialect, ...rest } = z.toJSONSchema(schema, {
		target: "draft-2020-12",
		io,
	});
	return rest;
}

const reference = (name: keyof typeof SCHEMAS) => ({
	$ref: `#/components/schemas/${name}`,
});
const json = (name: keyof typeof SCHEMAS) => ({
	"application/json": { schema: reference(name) },
});
const problemResponse = (description: string) => ({
	description,
	content: {
		"application/problem+json": { schema: reference("ProblemDetails") },
	},
});

function computation(p: {
	operationId: string;
	summary: string;
	body: keyof typeof SCHEMAS;
	answer: keyof typeof SCHEMAS;
	example: object;
}): object {
	return {
		post: {
			operationId: p.operationId,
			summary: p.summary,
			requestBody: {
				required: true,
				content: {
					"application/json": { schema: reference(p.body), example: p.example },
				},
			},
			responses: {
				200: { description: "Computed", content: json(p.answer) },
				400: problemResponse("Not JSON, or not of the described form"),
				413: problemResponse("Too large"),
				422: problemResponse(
					"Well formed, but outside what a model can answer",
				),
			},
		},
	};
}

/** The open computation as an OpenAPI 3.1 document, generated from the schemas that validate it. */
export function openApiDocument(): object {
	return {
		openapi: "3.1.0",
		jsonSchemaDialect: "https://json-schema.org/draft/2020-12/schema",
		info: {
			title: "Cue fitting advisor: open computation",
			version: MODEL_VERSION,
			description:
				"The computations behind the pages, and the files of saved specs. Lengths in mm, masses in g, angles in degrees, as the names say. Every model value is an estimate with a standard deviation and its standing. Errors are RFC 9457 problem details naming field, value and bound.",
		},
		servers: [{ url: "/" }],
		security: [],
		paths: {
			"/api/v1/cue": computation({
				operationId: "computeCue",
				summary:
					"Geometry, weight, balance, inertia, bending, end mass, added weight, stations, rules, moisture and grain of one cue",
				body: "CueBody",
				answer: "CueAnswer",
				example: {
					cue: {
						lengthMm: 1473,
						buttDiameterMm: 29,
						tipDiameterMm: 9.5,
						shaftWood: "white-ash",
						buttWood: "gaboon-ebony",
					},
					wantedMassG: 520,
				},
			}),
			"/api/v1/cue/picture": {
				post: {
					operationId: "drawCue",
					summary: "The true picture of one cue as PNG",
					requestBody: {
						required: true,
						content: {
							"application/json": {
								schema: reference("CuePictureBody"),
								example: {
									cue: {
										lengthMm: 1473,
										buttDiameterMm: 29,
										tipDiameterMm: 9.5,
										shaftWood: "white-ash",
										buttWood: "gaboon-ebony",
									},
								},
							},
						},
					},
					responses: {
						200: {
							description: "Drawn",
							content: { "image/png": { schema: {} } },
						},
						400: problemResponse("Not JSON, or not of the described form"),
						413: problemResponse("Too large"),
						422: problemResponse("Well formed, but cannot be made"),
					},
				},
			},
			"/api/v1/present-cue": computation({
				operationId: "readPresentCue",
				summary:
					"Inertia and stiffness of a cue in use, and the nearest cue with something changed",
				body: "PresentCueBody",
				answer: "PresentCueAnswer",
				example: {
					reading: {
						lengthMm: 1473,
						massG: 510,
						balanceFromButtMm: 430,
						tipDiameterMm: 9.5,
						diameters: [
							{ fromButtMm: 0, diameterMm: 29.5 },
							{ fromButtMm: 300, diameterMm: 25.3 },
							{ fromButtMm: 700, diameterMm: 19 },
						],
						gripFromButtMm: 110,
					},
					change: { buttDiameterMm: 28.5, lengthMm: 1486 },
				},
			}),
			"/api/v1/shot": computation({
				operationId: "computeShot",
				summary:
					"Ball speed, spin, deflection and pivot of one cue over offset and weight",
				body: "ShotBody",
				answer: "ShotAnswer",
				example: {
					cue: {
						lengthMm: 1473,
						buttDiameterMm: 29,
						tipDiameterMm: 9.5,
						shaftWood: "white-ash",
						buttWood: "gaboon-ebony",
					},
					gameId: "snooker",
					cueMassG: 520,
				},
			}),
			"/api/v1/fit": computation({
				operationId: "fitPlayer",
				summary:
					"Body segments, grip circle, span, length window, pose, closure, holding times and growth of one player",
				body: "FitBody",
				answer: "FitAnswer",
				example: {
					player: { statureMm: 1780, gripCircleReadingsMm: [29.5, 29, 29.5] },
					stance: { gameId: "snooker", bridgeArm: "straight" },
				},
			}),
			"/api/v1/advice": computation({
				operationId: "adviseCue",
				summary:
					"Recommended length, weight, butt diameter range, tip and balance with reasons",
				body: "AdviceBody",
				answer: "AdviceAnswer",
				example: {
					player: { statureMm: 1780 },
					stance: { gameId: "snooker" },
					wishes: { massG: 520 },
				},
			}),
			"/api/v1/trial": computation({
				operationId: "analyseTrial",
				summary:
					"Shots by cue to differences with intervals, the chance of luck, and the pair to try next",
				body: "TrialBody",
				answer: "TrialAnswer",
				example: {
					rack: [
						{
							id: "light",
							name: "Light",
							lengthMm: 1460,
							massG: 480,
							buttDiameterMm: 29,
							tipDiameterMm: 9.5,
							balanceFromButtMm: 430,
						},
						{
							id: "heavy",
							name: "Heavy",
							lengthMm: 1460,
							massG: 540,
							buttDiameterMm: 29,
							tipDiameterMm: 9.5,
							balanceFromButtMm: 415,
						},
					],
					sessions: [
						{
							shots: [
								{ cueId: "light", isPotted: true, line: "on", pair: 0 },
								{ cueId: "heavy", isPotted: false, line: "left", pair: 0 },
								{ cueId: "heavy", isPotted: true, position: "near", pair: 1 },
								{ cueId: "light", isPotted: true, position: "good", pair: 1 },
							],
						},
					],
				},
			}),
			...downloadPaths(problemResponse),
		},
		components: {
			schemas: Object.fromEntries(
				(Object.keys(SCHEMAS) as (keyof typeof SCHEMAS)[]).map((name) => [
					name,
					jsonSchemaOf(name),
				]),
			),
		},
	};
}
