import { answerShot } from "@/lib/advice/answer-cue";
import { shotBodySchema } from "@/lib/forms/api-cue";
import { endpoint } from "../_parts/endpoint";

export const POST = endpoint(shotBodySchema, answerShot);
