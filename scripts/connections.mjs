import { subscribe } from "node:diagnostics_channel";

/**
 * From now on every request to a server of this process says of itself that it comes from where its
 * connection comes from, whatever it claimed. Not behind a proxy of one's own: all would come from there.
 */
export function askConnections() {
	subscribe("http.server.request.start", (message) => {
		const { request } =
			/** @type {{request: import("node:http").IncomingMessage}} */ (message);
		request.headers["x-forwarded-for"] = request.socket.remoteAddress ?? "";
	});
}
