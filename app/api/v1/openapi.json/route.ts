import { openApiDocument } from "@/lib/documents/openapi";

export const dynamic = "force-static";

export const GET = (): Response => Response.json(openApiDocument());
