"""An example script ends well, says what it found, and leaves a picture with something on it: SCRIPT SCENARIO."""
import pathlib
import struct
import subprocess
import sys

import matplotlib.image

script, scenario = sys.argv[1:]
picture = pathlib.Path(pathlib.Path(script).stem + ".png")
picture.unlink(missing_ok=True)
said = subprocess.run([sys.executable, script, scenario, picture], check=True, stdout=subprocess.PIPE, text=True).stdout
assert said.startswith("Planning and training aid."), said
assert " h" in said and "Person A" in said, said

# PNG (ISO/IEC 15948): a signature of eight bytes, then the chunk IHDR with width and height.
data = picture.read_bytes()
assert data[:8] == b"\x89PNG\r\n\x1a\n", data[:8]
length, kind, width, height = struct.unpack(">I4sII", data[8:24])
assert (length, kind) == (13, b"IHDR"), (length, kind)
assert data[-8:-4] == b"IEND", data[-8:]
pixels = matplotlib.image.imread(picture)
assert pixels.shape[:2] == (height, width) and min(width, height) >= 600, (pixels.shape, width, height)
ink = (pixels[..., :3] < 0.9).any(axis=-1)
# Something stands in each quarter of the picture, but most of it is paper.
for top in (0, height // 2):
    for left in (0, width // 2):
        quarter = ink[top : top + height // 2, left : left + width // 2]
        assert 0.005 < quarter.mean() < 0.5, (top, left, quarter.mean())
print(said)
