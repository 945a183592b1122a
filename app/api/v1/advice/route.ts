import { advise } from "@/lib/advice/advise";
import { adviceBodySchema } from "@/lib/forms/api-requests";
import { endpoint } from "../_parts/endpoint";

export const POST = endpoint(adviceBodySchema, advise);
