"""Media that names an address on the network: as the path itself, and inside playlists, under true and false endings."""

import pathlib
import socket

SHAPES = {
    "m3u8": "#EXTM3U\n#EXT-X-TARGETDURATION:9\n#EXTINF:9,\n{url}.ts\n#EXT-X-ENDLIST\n",
    "m3u": "#EXTM3U\n{url}.mp3\n",
    "ffconcat": "ffconcat version 1.0\nfile {url}.mp4\n",
    "mpd": '<?xml version="1.0"?><MPD xmlns="urn:mpeg:dash:schema:mpd:2011" type="static" mediaPresentationDuration="PT9S">'
           '<Period><AdaptationSet mimeType="audio/mp4"><Representation id="1" bandwidth="1"><BaseURL>{url}.mp4</BaseURL>'
           "<SegmentBase/></Representation></AdaptationSet></Period></MPD>",
    "sdp": "v=0\no=- 0 0 IN IP4 127.0.0.1\ns=x\nc=IN IP4 127.0.0.1\nt=0 0\nm=audio {port} RTP/AVP 0\n",
    "smil": '<smil><body><audio src="{url}.mp3"/></body></smil>',
    "asx": '<asx version="3.0"><entry><ref href="{url}.wma"/></entry></asx>',
    "pls": "[playlist]\nFile1={url}.mp3\nNumberOfEntries=1\n",
    "rtsp": "RTSPtext\nrtsp://127.0.0.1:{port}/x\n",
}


class Listener:
    """A server on this machine that counts who comes."""

    def __init__(self):
        self.socket = socket.create_server(("127.0.0.1", 0), backlog=128)
        self.socket.setblocking(False)
        self.port = self.socket.getsockname()[1]

    def came(self):
        """How many since it was last asked."""
        count = 0
        while True:
            try:
                self.socket.accept()[0].close()
            except BlockingIOError:
                return count
            count += 1

    def can_be_reached(self):
        socket.create_connection(("127.0.0.1", self.port)).close()
        return self.came() == 1


def media(folder, port):
    """Everything that might be opened as a recording, and must not lead anywhere."""
    url = f"http://127.0.0.1:{port}/x"
    names = [f"{scheme}://127.0.0.1:{port}/x.mp4" for scheme in ("http", "tcp", "rtmp", "rtsp", "ftp", "udp", "hls+http")]
    names += [f"concat:{url}.ts|{url}.ts", f"cache:{url}.mp4", f"async:{url}.mp4", f"subfile,,start,0,end,9,,:{url}.mp4"]
    for kind, text in SHAPES.items():
        for ending in (kind, "mp4", "wav"):
            file = pathlib.Path(folder) / f"{kind}.{ending}"
            file.write_text(text.format(url=url, port=port))
            names.append(str(file))
    return names
