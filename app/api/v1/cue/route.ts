import { answerCue } from "@/lib/advice/answer-cue";
import { cueBodySchema } from "@/lib/forms/api-cue";
import { endpoint } from "../_parts/endpoint";

export const POST = endpoint(cueBodySchema, answerCue);
