"""Reads a DXF file with ezdxf: the findings of its audit, then one line for each circle (layer, x, y, radius) and the outline's length."""
import sys
import ezdxf
from ezdxf import path

document = ezdxf.readfile(sys.argv[1])
audit = document.audit()
print(f"AUDIT {len(audit.errors)} {len(audit.fixes)}")
for entity in document.modelspace():
    if entity.dxftype() == "CIRCLE":
        print(f"CIRCLE {entity.dxf.layer} {entity.dxf.center.x!r} {entity.dxf.center.y!r} {entity.dxf.radius!r}")
    else:
        outline = path.make_path(entity)
        print(f"OUTLINE {entity.dxf.layer} {outline.is_closed} {sum(a.distance(b) for a, b in zip(points, points[1:]))!r}"
              if (points := list(outline.flattening(1e-4))) else "")
