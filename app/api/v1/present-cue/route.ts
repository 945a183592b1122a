import { answerPresentCue } from "@/lib/advice/answer-present-cue";
import { presentCueBodySchema } from "@/lib/forms/api-present-cue";
import { endpoint } from "../_parts/endpoint";

export const POST = endpoint(presentCueBodySchema, answerPresentCue);
