package org.seamwright.desk;

import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.seamwright.job.Job;
import org.seamwright.job.JobDefaults;
import org.seamwright.region.Treatment;
import org.seamwright.units.UnitSystem;

/** Jobs for models that have none, and where they are kept. */
public final class NewJobs {
  private NewJobs() {}

  /** A job with everything plated and the usual settings; it names its mesh by its whole path. */
  static Job of(Path mesh, Job.Scale scale, UnitSystem display) {
    String file = slashed(mesh.toAbsolutePath().normalize());
    return new Job(
        JobDefaults.piece(file),
        "",
        new Job.MeshSource(file, "", scale),
        Treatment.PLATE,
        List.of(),
        JobDefaults.sections(),
        JobDefaults.plating(JobDefaults.RECIPE),
        JobDefaults.masking(),
        display);
  }

  /** The file that a job for a model is offered to be saved in: beside it, under its name. */
  public static Path beside(Path mesh) {
    String name = JobDefaults.piece(Objects.toString(mesh.getFileName(), "piece"));
    return mesh.resolveSibling(name + ".json");
  }

  /** The job naming its mesh as seen from the folder it is saved in. */
  static Job movedTo(Job job, Path mesh, Path jobFile) {
    Path folder = jobFile.toAbsolutePath().normalize().getParent();
    Path whole = mesh.toAbsolutePath().normalize();
    boolean related = folder != null && Objects.equals(folder.getRoot(), whole.getRoot());
    String file = slashed(related ? folder.relativize(whole) : whole);
    Job.MeshSource is = job.mesh();
    return job.withMesh(new Job.MeshSource(file, is.sha256(), is.surface(), is.scale()));
  }

  /** Whether a job remembers nothing of its mesh. */
  static boolean isUnrecorded(Job job) {
    return job.mesh().sha256().isEmpty() && job.mesh().surface().equals(Optional.empty());
  }

  private static String slashed(Path path) {
    return path.toString().replace('\\', '/');
  }
}
