import { appIconPng } from "@/lib/documents/app-icon";

export const size = { width: 180, height: 180 };
export const contentType = "image/png";

/** For home screens that look for no manifest; they round the corners themselves. */
export default function appleIcon(): Response {
	return new Response(
		new Uint8Array(appIconPng({ sizePx: size.width, isMaskable: true })),
		{ headers: { "content-type": contentType } },
	);
}
