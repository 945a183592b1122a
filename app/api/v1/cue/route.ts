import { answerCue } from "@/lib/advice/answer";
import { cueBodySchema } from "@/lib/forms/api-requests";
import { endpoint } from "../_parts/endpoint";

export const POST = endpoint(cueBodySchema, answerCue);
