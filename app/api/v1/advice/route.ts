import { recommend } from "@/lib/advice/recommend";
import { adviceBodySchema } from "@/lib/forms/api-requests";
import { endpoint } from "../_parts/endpoint";

export const POST = endpoint(adviceBodySchema, (input) => recommend(input));
