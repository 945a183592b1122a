import { trialBodySchema } from "@/lib/forms/api-requests";
import { answerTrial } from "@/lib/trial/answer";
import { endpoint } from "../_parts/endpoint";

export const POST = endpoint(trialBodySchema, answerTrial);
