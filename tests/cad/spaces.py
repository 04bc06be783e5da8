"""Spaces that faces look into: (sense, low corner, high corner, facing).

A face looks into the first space that it fits. With `facing` only faces within 45 degrees of that direction do.
"""

FAR = 1.0e5


def floor():
    """Below the floor."""
    return ("floor", (-FAR, -FAR, -FAR), (FAR, FAR, 0), None)


def wall(behind):
    """Behind a piece."""
    return ("wall", (-FAR, behind, -FAR), (FAR, FAR, FAR), None)
