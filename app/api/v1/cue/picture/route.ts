import { cuePicturePng } from "@/lib/documents/cue-picture-png";
import {
	cuePictureSchema,
	pictureBodyFromQuery,
} from "@/lib/forms/cue-picture-request";
import { accept } from "@/lib/numerics/outcome";
import { endpoint } from "../../_parts/endpoint";

/** A request for a picture, checked and refused as every computation here is, answered in PNG. */
export async function POST(request: Request): Promise<Response> {
	const made: { png: Buffer | null } = { png: null };
	const answer = await endpoint(cuePictureSchema, (asked) => {
		const picture = cuePicturePng(asked);
		if (!picture.ok) return picture;
		made.png = picture.value;
		return accept(null);
	})(request);
	if (!answer.ok || made.png === null) return answer;
	return new Response(new Uint8Array(made.png), {
		headers: {
			"content-type": "image/png",
			"content-disposition": 'inline; filename="cue.png"',
			// The same request always gives the same picture.
			"cache-control": "public, max-age=3600",
		},
	});
}

/** The same from a query, for where an address is all there is: the cue's fields and the picture's side by side. */
export function GET(request: Request): Promise<Response> {
	const { searchParams } = new URL(request.url);
	return POST(
		new Request(request.url, {
			method: "POST",
			body: JSON.stringify(pictureBodyFromQuery(searchParams)),
		}),
	);
}
