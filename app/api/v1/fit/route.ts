import { answerFit } from "@/lib/advice/answer-fit";
import { fitBodySchema } from "@/lib/forms/api-requests";
import { endpoint } from "../_parts/endpoint";

export const POST = endpoint(fitBodySchema, answerFit);
