"""Figures of VTK for open meshes: vertices, triangles, area, open and branching edges, parts.

Usage: /usr/bin/python3 figures_vtk.py FILE...   (Debian: python3-vtk9)
Points are merged where their coordinates are equal; parts are those joined by a shared point.
"""
import sys
import vtk

READERS = {"stl": vtk.vtkSTLReader, "obj": vtk.vtkOBJReader, "ply": vtk.vtkPLYReader}


def edges(data, kind):
    found = vtk.vtkFeatureEdges()
    found.SetInputData(data)
    for each in ("BoundaryEdges", "NonManifoldEdges", "FeatureEdges", "ManifoldEdges"):
        getattr(found, each + ("On" if each == kind else "Off"))()
    found.Update()
    return found.GetOutput().GetNumberOfLines()


def figures(file):
    reader = READERS[file.lower().rsplit(".", 1)[1]]()
    reader.SetFileName(file)
    triangles = vtk.vtkTriangleFilter()
    triangles.SetInputConnection(reader.GetOutputPort())
    triangles.PassLinesOff()
    triangles.PassVertsOff()
    clean = vtk.vtkCleanPolyData()
    clean.SetInputConnection(triangles.GetOutputPort())
    clean.SetTolerance(0)
    clean.ConvertPolysToLinesOff()
    clean.Update()
    data = clean.GetOutput()
    count = data.GetNumberOfPolys()
    area = vtk.vtkCellSizeFilter()
    area.SetInputData(data)
    area.ComputeSumOn()
    area.Update()
    parts = vtk.vtkPolyDataConnectivityFilter()
    parts.SetInputData(data)
    parts.SetExtractionModeToAllRegions()
    parts.Update()
    return (
        data.GetNumberOfPoints(),
        count,
        "%.10g" % area.GetOutput().GetFieldData().GetArray("Area").GetTuple1(0),
        edges(data, "BoundaryEdges"),
        edges(data, "NonManifoldEdges"),
        parts.GetNumberOfExtractedRegions(),
    )


for name in sys.argv[1:]:
    print(name, *figures(name), flush=True)
